import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import button from '@/app/_look/button.module.css';
import { AtWorkNote } from '../_parts/at-work-note';
import { ConfirmForm } from '../_parts/confirm-form';
import { FaultList } from '../_parts/fault-list';
import { FileHoldings } from '../_parts/file-holdings';
import { LoadResult } from '../_parts/load-result';
import { hasFailed, workOn } from '../_staging/at-work';
import { stagedId } from '../_staging/staged-file';
import { readStaged } from '../_staging/staging';
import { demand, mayHandle } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: 'Check the file' };

export default async function StagedFilePage({ params }: { params: Promise<{ file: string }> }) {
  const id = stagedId.safeParse((await params).file);
  // Asked before the record is read: what ends in between has its outcome in the record.
  const work = id.success ? await workOn(id.data) : null;
  const staged = id.success ? await readStaged(id.data) : null;
  const viewer = await enter();
  demand(viewer, 'load files');
  if (!id.success || staged === null || !mayHandle(viewer, staged)) notFound();
  const failed = hasFailed(id.data);
  const { checked } = staged;
  const { shop } = viewer;
  const above = <Link href="/load">Load another file</Link>;

  if (work !== null) {
    return (
      <Page
        title={work.task === 'check' ? 'The file is being checked' : 'The file is being stored'}
        lead={staged.name}
      >
        <AtWorkNote {...work} />
      </Page>
    );
  }
  if (checked === null) {
    return (
      <Page title="The file was not checked" lead={`${staged.name}: nothing of it was stored.`}>
        <Note kind="fault" live>
          <p>
            Reading it broke off: the program was stopped meanwhile, or the file takes more memory than there
            is. Send it again; if that breaks off too, split it, for example by year.
          </p>
        </Note>
        <p>
          <Link className={button.strong} href="/load">
            Send it again
          </Link>
        </p>
      </Page>
    );
  }
  if (staged.result !== null) {
    return (
      <Page
        above={above}
        title={staged.result.added === 0 ? 'Nothing was added' : 'The file is loaded'}
        lead={staged.name}
      >
        <LoadResult result={staged.result} />
      </Page>
    );
  }
  if (checked.faultCount > 0) {
    return (
      <Page
        above={above}
        title="The file is refused"
        lead={`${staged.name}: nothing of it was stored. Mend what is named here and send the file again.`}
      >
        <FaultList faults={checked.faults} total={checked.faultCount} />
        <FileHoldings summary={checked.summary} timeZone={shop.timeZone} />
      </Page>
    );
  }
  return (
    <Page
      above={above}
      title="The file can be loaded"
      lead={`${staged.name}: no fault was found. Look whether it holds what you expect, then load it.`}
    >
      <FileHoldings summary={checked.summary} timeZone={shop.timeZone} />
      {failed && (
        <Note kind="fault" live>
          <p>
            The file could not be stored, and nothing of it was: the window in which Rehang was started says
            why. It is still waiting here, so you can try again.
          </p>
        </Note>
      )}
      <ConfirmForm action={`/load/${id.data}/confirm`} readings={checked.summary.readings} />
    </Page>
  );
}

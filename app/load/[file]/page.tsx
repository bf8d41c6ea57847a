import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { firstOf, type Query } from '@/app/_words/address';
import { getShop } from '@/lib/store';
import { ConfirmForm } from '../_parts/confirm-form';
import { FaultList } from '../_parts/fault-list';
import { FileHoldings } from '../_parts/file-holdings';
import { LoadResult } from '../_parts/load-result';
import { stagedId } from '../_staging/staged-file';
import { readStaged } from '../_staging/staging';

export const metadata: Metadata = { title: 'Check the file' };

interface Props {
  params: Promise<{ file: string }>;
  searchParams: Promise<Query>;
}

export default async function StagedFilePage({ params, searchParams }: Props) {
  const id = stagedId.safeParse((await params).file);
  const staged = id.success ? await readStaged(id.data) : null;
  if (!id.success || staged === null) notFound();
  const failed = firstOf(await searchParams, 'failed') !== undefined;
  const shop = await getShop();
  const above = <Link href="/load">Load another file</Link>;

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
  if (staged.faultCount > 0) {
    return (
      <Page
        above={above}
        title="The file is refused"
        lead={`${staged.name}: nothing of it was stored. Mend what is named here and send the file again.`}
      >
        <FaultList faults={staged.faults} total={staged.faultCount} />
        <FileHoldings summary={staged.summary} timeZone={shop.timeZone} />
      </Page>
    );
  }
  return (
    <Page
      above={above}
      title="The file can be loaded"
      lead={`${staged.name}: no fault was found. Look whether it holds what you expect, then load it.`}
    >
      <FileHoldings summary={staged.summary} timeZone={shop.timeZone} />
      {failed && (
        <Note kind="fault" live>
          <p>
            The file could not be stored, and nothing of it was: the reason stands in the program’s own log.
            It is still waiting here, so you can try again.
          </p>
        </Note>
      )}
      <ConfirmForm action={`/load/${id.data}/confirm`} readings={staged.summary.readings} />
    </Page>
  );
}

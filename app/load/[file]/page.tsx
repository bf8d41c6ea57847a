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
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { WordsOnDevice } from '@/app/_words/on-device';

export const generateMetadata = titled(() => words('load')('checked.name'));

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
  const t = words('load');
  const { name } = staged;
  const above = <Link href="/load">{t('another')}</Link>;

  if (work !== null) {
    return (
      <Page title={t(work.task === 'check' ? 'work.checking' : 'work.storing')} lead={name}>
        <AtWorkNote {...work} />
      </Page>
    );
  }
  if (checked === null) {
    return (
      <Page title={t('broken.title')} lead={t('broken.lead', { name })}>
        <Note kind="fault" live>
          <p>{t('broken.why')}</p>
        </Note>
        <p>
          <Link className={button.strong} href="/load">
            {t('broken.again')}
          </Link>
        </p>
      </Page>
    );
  }
  if (staged.result !== null) {
    return (
      <Page
        above={above}
        title={t(staged.result.added === 0 ? 'result.nothing' : 'result.loaded')}
        lead={name}
      >
        <LoadResult result={staged.result} />
      </Page>
    );
  }
  if (checked.faultCount > 0) {
    return (
      <Page above={above} title={t('faulty.title')} lead={t('faulty.lead', { name })}>
        <FaultList faults={checked.faults} total={checked.faultCount} />
        <FileHoldings summary={checked.summary} timeZone={shop.timeZone} />
      </Page>
    );
  }
  return (
    <Page above={above} title={t('checked.title')} lead={t('checked.lead', { name })}>
      <FileHoldings summary={checked.summary} timeZone={shop.timeZone} />
      {failed && (
        <Note kind="fault" live>
          <p>{t('checked.failed')}</p>
        </Note>
      )}
      <WordsOnDevice parts={['upload']}>
        <ConfirmForm action={`/load/${id.data}/confirm`} readings={checked.summary.readings} />
      </WordsOnDevice>
    </Page>
  );
}

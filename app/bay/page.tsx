import type { Metadata } from 'next';
import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { firstOf, type Query } from '@/app/_words/address';
import { WordsOnDevice } from '@/app/_words/on-device';
import { hear } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { listBayRounds, listSheets } from '@/lib/access';
import { BeginForm } from './_parts/begin-form';
import { RoundTable } from './_parts/round-table';
import { StayThere } from './_parts/stay-there';
import { WaitingNote } from './_parts/waiting-note';

export async function generateMetadata(): Promise<Metadata> {
  await hear();
  return { title: words('bay')('title') };
}

/** The rounds that are open beside a vehicle, and the way to begin one. */
export default async function BayPage({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const t = words('bay');
  const [rows, sheets, told] = await Promise.all([listBayRounds(viewer), listSheets(viewer), said()]);
  const { shop, code } = viewer;
  const open = rows.filter(({ finishedAt }) => finishedAt === null);
  const usable = sheets.filter(({ retiredAt }) => retiredAt === null).map(({ name }) => name);
  const asked = firstOf(await searchParams, 'sheet');
  const done = rows.filter(({ finishedAt }) => finishedAt !== null);
  return (
    <Page
      title={t('title')}
      lead={t('lead')}
      actions={
        <>
          <Link className={button.button} href="/sheets">
            {t('sheetsLink')}
          </Link>
          <Link className={button.button} href="/bay/helper">
            {t('helperLink')}
          </Link>
        </>
      }
    >
      {told !== null && (
        <Note kind="fault" live>
          <p>{told}</p>
        </Note>
      )}
      <WordsOnDevice parts={['bay.waiting']}>
        <WaitingNote who={`${shop.id}.${code}`} code={code} />
        <StayThere />
      </WordsOnDevice>
      <Panel id="open" title={t('open.title')}>
        <RoundTable rows={open} timeZone={shop.timeZone} finished={false} />
      </Panel>
      <Panel id="begin" title={t('begin.title')} note={t('begin.note')}>
        {usable.length === 0 ? <p>{t('begin.noSheets')}</p> : <BeginForm sheets={usable} sheet={asked} />}
      </Panel>
      {done.length > 0 && (
        <Panel id="done" title={t('done.title')}>
          <RoundTable rows={done} timeZone={shop.timeZone} finished />
        </Panel>
      )}
    </Page>
  );
}

import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { address, sheetAddress } from '@/app/_words/address';
import { labelFrom } from '@/app/_words/parameters';
import { hear, speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { Remarks } from '@/app/sheets/_editor/remark-rows';
import { CopyForm } from '@/app/sheets/_parts/copy-form';
import { History } from '@/app/sheets/_parts/history';
import { LengthTable } from '@/app/sheets/_parts/length-table';
import { PointTable } from '@/app/sheets/_parts/point-table';
import { RetireForm } from '@/app/sheets/_parts/retire-form';
import { sayer } from '@/app/sheets/_parts/say';
import { StandingPicture } from '@/app/sheets/_parts/standing-picture';
import { may, openSheet, sheetHistory, type SheetRecord } from '@/lib/access';
import { checkRows, rowsOf, type SheetContent } from '@/lib/measure/sheet';
import { frozen, onceFor } from '@/lib/memory';

interface Props {
  params: Promise<{ sheet: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await hear();
  return { title: words('sheets')('sheet', { sheet: labelFrom((await params).sheet) }) };
}

export default async function SheetPage({ params }: Props) {
  const name = labelFrom((await params).sheet);
  const viewer = await enter();
  const t = words('sheets');
  const say = sayer(t);
  const [sheet, history, told] = await Promise.all([
    openSheet(viewer, name),
    sheetHistory(viewer, name),
    said(),
  ]);
  if (sheet === null) notFound();
  const { rows, remarks, unfit } = looked(sheet.points, sheet.dimensions);
  const keeps = may(viewer, 'keep sheets');
  return (
    <Page
      above={<Link href="/sheets">{t('all')}</Link>}
      title={t('sheet', { sheet: name })}
      lead={<Lead sheet={sheet} />}
      actions={
        <>
          {keeps && (
            <Link className={button.strong} href={`${sheetAddress(name)}/correct`}>
              {t('page.correct')}
            </Link>
          )}
          {sheet.retiredAt === null && (
            <Link className={button.button} href={`${address('/bay', { sheet: name })}#begin`}>
              {t('page.begin')}
            </Link>
          )}
          <a className={button.button} href={`${sheetAddress(name)}/download`} download>
            {t('page.download')}
          </a>
        </>
      }
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      {sheet.retiredAt !== null && (
        <Note>
          <p>{t('page.retired')}</p>
        </Note>
      )}
      <Panel id="drawing" title={t('page.drawing')}>
        <StandingPicture rows={rows} unfit={unfit} />
      </Panel>
      {remarks.length > 0 && (
        <Panel id="doubts" title={t('page.doubts')} note={t('page.doubtsNote')}>
          <Remarks remarks={remarks} say={say} speech={speech()} />
        </Panel>
      )}
      <Panel id="points" title={t('page.points')} note={t('page.pointsNote')}>
        <PointTable rows={rows.points} />
      </Panel>
      <Panel id="lengths" title={t('page.lengths')} note={t('page.lengthsNote')}>
        <LengthTable rows={rows} />
      </Panel>
      <Panel id="history" title={t('page.history')} note={t('page.historyNote')}>
        <History history={history} timeZone={viewer.shop.timeZone} />
      </Panel>
      {keeps && (
        <>
          <Panel id="copy" title={t('copy.title')} note={t('copy.note')}>
            <CopyForm sheet={name} />
          </Panel>
          <Panel
            id="retire"
            title={t(sheet.retiredAt === null ? 'retire.title' : 'retire.titleBack')}
            note={t(sheet.retiredAt === null ? 'retire.note' : 'retire.noteBack')}
          >
            <RetireForm sheet={name} retired={sheet.retiredAt !== null} />
          </Panel>
        </>
      )}
    </Page>
  );
}

/** The sheet as people enter it, what is to be said of it, and which of its lengths cannot fit. */
const looked = onceFor((points: SheetContent['points'], dimensions: SheetContent['dimensions']) => {
  const rows = rowsOf({ points, dimensions });
  const remarks = checkRows(rows);
  const unfit = remarks.flatMap(({ code, at }) =>
    at?.block === 'lengths' && code.startsWith('length-') ? [at.row] : [],
  );
  return frozen({ rows, remarks, unfit });
});

function Lead({ sheet: { name, revision, jobs } }: { sheet: SheetRecord }) {
  const t = words('sheets');
  return (
    <>
      {t('page.revision', { revision })}{' '}
      {jobs === 0
        ? t('page.noJobs')
        : t.rich('page.jobs', {
            jobs,
            link: (chunks) => <Link href={address('/jobs', { sheet: name })}>{chunks}</Link>,
          })}
    </>
  );
}

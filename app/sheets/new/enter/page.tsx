import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { firstOf, type Query } from '@/app/_words/address';
import { WordsOnDevice } from '@/app/_words/on-device';
import { speech } from '@/app/_words/speech';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { readDraft } from '@/app/sheets/_drafts/drafts';
import { SheetEditor } from '@/app/sheets/_editor/sheet-editor';
import { withEmptyRows } from '@/app/sheets/_editor/with-empty-rows';
import { FileFaults } from '@/app/sheets/_parts/file-faults';
import { inUnitsOf } from '@/app/sheets/_parts/typed-lengths';
import { demand } from '@/lib/access';

export const generateMetadata = titled(() => words('sheets')('enter.title'));

export default async function EnterSheet({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  demand(viewer, 'keep sheets');
  const t = words('sheets');
  const asked = firstOf(await searchParams, 'draft');
  const [draft, told] = [await readDraft(viewer, asked), await said()];
  const typed = draft === null ? { points: [], lengths: [] } : inUnitsOf(draft.typed, draft.units, speech());
  return (
    <Page above={<Link href="/sheets">{t('all')}</Link>} title={t('enter.title')} lead={t('enter.lead')}>
      {told !== null && (
        <Note kind="caution" live>
          <p>{told}</p>
        </Note>
      )}
      {asked !== undefined && draft === null && (
        <Note kind="fault" live>
          <p>{t('enter.gone')}</p>
        </Note>
      )}
      {draft !== null && draft.faults.length > 0 && <FileFaults faults={draft.faults} />}
      <WordsOnDevice parts={['sheets']}>
        <SheetEditor
          action="/sheets/new/keep"
          typed={withEmptyRows(typed)}
          tolerance={viewer.shop.defaultTolerance}
          knownDoubts={[]}
          of={{ kind: 'new', name: draft?.name ?? '', origin: draft?.origin ?? 'entered' }}
        />
      </WordsOnDevice>
    </Page>
  );
}

import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { firstOf, sheetAddress, type Query } from '@/app/_words/address';
import { WordsOnDevice } from '@/app/_words/on-device';
import { labelFrom } from '@/app/_words/parameters';
import { hear, speech } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import { readDraft } from '@/app/sheets/_drafts/drafts';
import { doubtsOf } from '@/app/sheets/_drafts/judge';
import { SheetEditor } from '@/app/sheets/_editor/sheet-editor';
import { withEmptyRows } from '@/app/sheets/_editor/with-empty-rows';
import { inUnitsOf, lengthTyped } from '@/app/sheets/_parts/typed-lengths';
import { demand, openSheet } from '@/lib/access';
import { rowsOf, typedOf } from '@/lib/measure/sheet';

interface Props {
  params: Promise<{ sheet: string }>;
  searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  await hear();
  return { title: words('sheets')('correct.title', { sheet: labelFrom((await params).sheet) }) };
}

export default async function CorrectSheet({ params, searchParams }: Props) {
  const name = labelFrom((await params).sheet);
  const viewer = await enter();
  demand(viewer, 'keep sheets');
  const t = words('sheets');
  const [sheet, told, asked] = [await openSheet(viewer, name), await said(), await searchParams];
  if (sheet === null) notFound();
  const draft = await readDraft(viewer, firstOf(asked, 'draft'));
  const own = draft?.of === name ? draft : null;
  const rows = rowsOf(sheet);
  const typed =
    own === null ? typedOf(rows, lengthTyped(speech())) : inUnitsOf(own.typed, own.units, speech());
  return (
    <Page
      above={<Link href={sheetAddress(name)}>{t('sheet', { sheet: name })}</Link>}
      title={t('correct.title', { sheet: name })}
      lead={t('correct.lead', { jobs: sheet.jobs })}
    >
      {told !== null && (
        <Note kind="caution" live>
          <p>{told}</p>
        </Note>
      )}
      <WordsOnDevice parts={['sheets']}>
        <SheetEditor
          action={`${sheetAddress(name)}/amend`}
          typed={withEmptyRows(typed)}
          tolerance={viewer.shop.defaultTolerance}
          knownDoubts={doubtsOf(rows)}
          of={{ kind: 'correction', revision: own?.revision ?? sheet.revision, reason: own?.reason ?? '' }}
        />
      </WordsOnDevice>
    </Page>
  );
}

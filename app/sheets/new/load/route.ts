import type { NextRequest } from 'next/server';
import { admit, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { keepDraft } from '@/app/sheets/_drafts/drafts';
import { address } from '@/app/_words/address';
import { words } from '@/app/_words/words';
import { demand } from '@/lib/access';
import type { TypedSheet } from '@/lib/measure/sheet';
import { MAX_SHEET_BYTES, readSheetFile, type SheetFile } from '@/lib/measure/sheet-file';

const PLACE = '/sheets/new/enter';
/** Points and lengths may come in a file each. */
const MOST_FILES = 4;

/** Takes a sheet file or several, and leads to the form that holds it, to be looked at, or to what is wrong with it. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'keep sheets');
    const t = words('sheets');
    const refuse = (text: string) => leadTo('/sheets', [saying(text, '/sheets')]);
    if (!(Number(request.headers.get('content-length') ?? Infinity) <= MOST_FILES * MAX_SHEET_BYTES))
      return refuse(t('load.tooLarge'));
    const files = (await request.formData()).getAll('file').filter((one) => one instanceof File);
    const chosen = files.filter(({ name, size }) => name !== '' || size > 0).slice(0, MOST_FILES);
    const [first] = chosen;
    if (first === undefined) return refuse(t('load.none'));
    const read = await Promise.all(chosen.map(async (file) => readSheetFile(await file.text())));
    const faults = read.flatMap((one, index) =>
      named(one, chosen.length > 1 ? chosen[index]?.name : undefined),
    );
    const typed: TypedSheet = {
      points: faults.length > 0 ? [] : read.flatMap((one) => one.typed.points),
      lengths: faults.length > 0 ? [] : read.flatMap((one) => one.typed.lengths),
    };
    const id = await keepDraft(viewer, {
      of: null,
      revision: 1,
      units: 'mm',
      reason: '',
      origin: 'loaded',
      typed,
      faults,
      name: nameIn(first.name),
    });
    return leadTo(address(PLACE, { draft: id }));
  });
}

const named = ({ faults }: SheetFile, file: string | undefined): SheetFile['faults'] =>
  file === undefined ? faults : faults.map((one) => ({ ...one, message: `${file}: ${one.message}` }));

/** A file's name without folder and ending is a first proposal for the sheet's. */
const nameIn = (file: string): string =>
  (file.split(/[\\/]/).at(-1) ?? '').replace(/\.[a-z]{1,4}$/i, '').slice(0, 80);

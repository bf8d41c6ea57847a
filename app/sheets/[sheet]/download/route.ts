import type { NextRequest } from 'next/server';
import { admit, sentence } from '@/app/_shop/admit';
import { labelFrom } from '@/app/_words/parameters';
import { words } from '@/app/_words/words';
import { openSheet } from '@/lib/access';
import { rowsOf } from '@/lib/measure/sheet';
import { writeSheetFile } from '@/lib/measure/sheet-file';

interface Props {
  params: Promise<{ sheet: string }>;
}

/** A sheet as a sheet file. */
export async function GET(request: NextRequest, { params }: Props): Promise<Response> {
  const name = labelFrom((await params).sheet);
  return admit(request, async (viewer) => {
    const sheet = await openSheet(viewer, name);
    if (sheet === null) return sentence(404, words('sheets')('form.gone'));
    return new Response(writeSheetFile(rowsOf(sheet)), {
      headers: {
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': `attachment; filename="sheet-${name.replaceAll(/[^A-Za-z0-9-]+/g, '-')}.csv"`,
        'Cache-Control': 'no-store',
      },
    });
  });
}

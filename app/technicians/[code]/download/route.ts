import type { NextRequest } from 'next/server';
import { admit, sentence } from '@/app/_shop/admit';
import { csvFile } from '@/app/_figures/download/files';
import { currentFigures, getPerson } from '@/lib/access';
import { words } from '@/app/_words/words';
import { askedHand } from '@/app/technicians/_parts/asked-hand';
import { HAND_COLUMNS, handRows } from '@/app/technicians/_parts/hand-rows';

interface Context {
  params: Promise<{ code: string }>;
}

/** The figures of one technician as CSV; held as the page is. */
export function GET(request: NextRequest, { params }: Context): Promise<Response> {
  return admit(request, async (viewer) => {
    const { code } = await params;
    if ((await getPerson(viewer, code)) === null) return sentence(404, words('hand')('noTechnician'));
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const [figures, asked] = await Promise.all([currentFigures(viewer), askedHand(viewer, code, query)]);
    const own = figures?.figures.technicians.find(({ technician }) => technician === code) ?? null;
    return csvFile(`hand-${code}`, {
      columns: HAND_COLUMNS,
      rows: handRows(own, figures?.figures.shop ?? null, asked),
    });
  });
}

import type { NextRequest } from 'next/server';
import { admit, sentence } from '@/app/_shop/admit';
import { csvFile } from '@/app/_figures/download/files';
import { currentFigures, getPerson, handAnswer } from '@/lib/access';
import { HAND_COLUMNS, handRows } from '@/app/technicians/_parts/hand-rows';

interface Context {
  params: Promise<{ code: string }>;
}

/** The figures of one technician as CSV. */
export function GET(request: NextRequest, { params }: Context): Promise<Response> {
  return admit(request, async (viewer) => {
    const { code } = await params;
    if ((await getPerson(viewer, code)) === null) return sentence(404, 'There is no such technician.');
    const [figures, hand] = await Promise.all([currentFigures(viewer), handAnswer(viewer, code)]);
    const own = figures?.figures.technicians.find(({ technician }) => technician === code) ?? null;
    return csvFile(`hand-${code}`, {
      columns: HAND_COLUMNS,
      rows: handRows(own, figures?.figures.shop ?? null, hand),
    });
  });
}

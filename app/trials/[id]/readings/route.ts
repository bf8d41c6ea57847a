import type { NextRequest } from 'next/server';
import type { Cell, CsvTable } from '@/app/_figures/download/csv-text';
import { csvFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { demand, getTrial, type TrialView } from '@/lib/access';
import { words } from '@/app/_words/words';
import { trialNumber } from '@/app/trials/_parts/trial-number';

/** The readings of a trial as CSV, in the order of its run sheet; a place that was not read yet is left empty. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const id = trialNumber((await params).id);
  return admit(request, async (viewer) => {
    demand(viewer, 'run trials');
    const trial = id === null ? null : await getTrial(viewer, id);
    if (trial === null) return sentence(404, words('trials')('noSuch'));
    if (trial.readings === null) return sentence(409, words('trials')('ownFirst'));
    return csvFile(`trial-${trial.id}`, readingRows(trial));
  });
}

const COLUMNS = [
  ...['run', 'person', 'point', 'hanging', 'reading'],
  ...['sheet_mm', 'value_mm', 'deviation_mm', 'entered_at'],
];

const readingRows = ({ plan, runs, readings }: TrialView): CsvTable => ({
  columns: COLUMNS,
  rows: runs.flatMap(({ order, person, point, setup }) =>
    Array.from({ length: plan.readings }, (_, index): Cell[] => {
      const sheet = plan.points.find(({ name }) => name === point)?.value ?? null;
      const read = readings?.find(({ run, repeat }) => run === order && repeat === index + 1);
      const deviation = read === undefined || sheet === null ? null : Number((read.value - sheet).toFixed(6));
      return [
        ...[order, person, point, setup, index + 1, sheet],
        ...[read?.value ?? null, deviation, read === undefined ? null : new Date(read.at).toISOString()],
      ];
    }),
  ),
});

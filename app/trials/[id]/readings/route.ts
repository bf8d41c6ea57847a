import type { NextRequest } from 'next/server';
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
    return new Response(csvOf(trial), {
      headers: {
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': `attachment; filename="trial-${trial.id}.csv"`,
        'Cache-Control': 'no-store',
      },
    });
  });
}

const HEAD = [
  'run',
  'person',
  'point',
  'hanging',
  'reading',
  'sheet_mm',
  'value_mm',
  'deviation_mm',
  'entered_at',
];

function csvOf({ plan, runs, readings }: TrialView): string {
  const lines = runs.flatMap(({ order, person, point, setup }) =>
    Array.from({ length: plan.readings }, (_, index) => {
      const sheet = plan.points.find(({ name }) => name === point)?.value ?? null;
      const read = readings?.find(({ run, repeat }) => run === order && repeat === index + 1);
      const deviation =
        read === undefined || sheet === null ? '' : String(Number((read.value - sheet).toFixed(6)));
      return [
        ...[order, text(person), text(point), setup, index + 1, sheet ?? ''],
        ...[read?.value ?? '', deviation, read === undefined ? '' : new Date(read.at).toISOString()],
      ].join(',');
    }),
  );
  return `${[HEAD.join(','), ...lines].join('\r\n')}\r\n`;
}

/** Quoted where it must be; an apostrophe keeps a spreadsheet from running a name as a formula. */
function text(value: string): string {
  const plain = /^'*[=+\-@\t\r\n＝＋－＠]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}

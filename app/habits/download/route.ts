import type { NextRequest } from 'next/server';
import { admit } from '@/app/_shop/admit';
import { csvFile } from '@/app/_figures/download/files';
import { habitName } from '@/app/_words/habit-name';
import { told } from '@/app/_words/told';
import { demand } from '@/lib/access';
import { askedHabits } from '../_parts/asked-habits';
import { byTechnician } from '../_parts/by-technician';

const COLUMNS = [
  ...['technician', 'habit', 'name', 'state', 'effect', 'effect_low_95', 'effect_high_95', 'effect_unit'],
  ...['without_habit', 'p', 'adjusted_p', 'setups', 'evidence', 'shown_by'],
];

/** Every technician by every habit, or by one (`habit=`), as CSV; held as the page is. */
export function GET(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'see everybody’s figures');
    const wanted = request.nextUrl.searchParams.get('habit');
    const asked = await askedHabits(viewer, Object.fromEntries(request.nextUrl.searchParams));
    const whose = asked.question.technician;
    const cells = byTechnician(asked.cells ?? [])
      .flatMap(({ technician, cells: own }) => (whose === undefined || technician === whose ? own : []))
      .filter(({ habit }) => wanted === null || habit === wanted);
    return csvFile(wanted === null ? 'habits' : `habit-${wanted}`, {
      columns: COLUMNS,
      rows: cells.map(({ technician, habit, state, effect, p, adjustedP, setups, evidence, shownBy }) => [
        ...[technician, habit, habitName(habit), state],
        ...[effect?.value ?? null, effect?.low ?? null, effect?.high ?? null, effect?.unit ?? null],
        ...[effect?.reference ?? null, p, adjustedP, setups, told(evidence), shownBy.join(' ')],
      ]),
    });
  });
}

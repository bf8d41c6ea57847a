import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { demand } from '@/lib/access';
import { HABIT_TEXTS, HABITS } from '@/lib/assess/habits';
import { askedHabits } from '../_parts/asked-habits';
import { byTechnician, ofHabit } from '../_parts/by-technician';
import { effectDrawing, unitsOf } from '../_parts/effect-drawing';
import { matrixDrawing } from '../_parts/matrix-drawing';

/** The matrix, or one habit in every technician (`habit=`, `unit=`), as a picture; held as the page is. */
export function GET(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'see everybody’s figures');
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const { cells, question } = await askedHabits(viewer, query);
    if (cells === null) return sentence(404, 'This is not worked out yet. Try again in a minute.');
    if (query.habit === undefined) {
      const hands = byTechnician(cells).filter(
        ({ technician }) => question.technician === undefined || technician === question.technician,
      );
      return pictureFile('habits', 'Habits by technician', matrixDrawing(hands));
    }
    const habit = HABITS.find((one) => one === query.habit);
    const own = habit === undefined ? [] : ofHabit(cells, habit);
    const unit = unitsOf(own).find((one) => query.unit === undefined || one === query.unit);
    if (habit === undefined || unit === undefined) return sentence(404, 'There is no such picture.');
    return pictureFile(
      `habit-${habit}`,
      `${HABIT_TEXTS[habit].name}, by technician`,
      effectDrawing(own, unit),
    );
  });
}

import type { NextRequest } from 'next/server';
import { pictureFile } from '@/app/_figures/download/files';
import { admit, sentence } from '@/app/_shop/admit';
import { habitName } from '@/app/_words/habit-name';
import { words } from '@/app/_words/words';
import { demand } from '@/lib/access';
import { HABITS } from '@/lib/assess/habits';
import { askedHabits } from '../_parts/asked-habits';
import { byTechnician, ofHabit } from '../_parts/by-technician';
import { effectDrawing, unitsOf } from '../_parts/effect-drawing';
import { matrixDrawing } from '../_parts/matrix-drawing';

/** The matrix, or one habit in every technician (`habit=`, `unit=`), as a picture; held as the page is. */
export function GET(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'see everybody’s figures');
    const t = words('habits');
    const query = Object.fromEntries(request.nextUrl.searchParams);
    const { cells, question } = await askedHabits(viewer, query);
    if (cells === null) return sentence(404, t('notYet'));
    if (query.habit === undefined) {
      const hands = byTechnician(cells).filter(
        ({ technician }) => question.technician === undefined || technician === question.technician,
      );
      return pictureFile('habits', t('picture.title'), matrixDrawing(hands));
    }
    const habit = HABITS.find((one) => one === query.habit);
    const own = habit === undefined ? [] : ofHabit(cells, habit);
    const unit = unitsOf(own).find((one) => query.unit === undefined || one === query.unit);
    if (habit === undefined || unit === undefined) return sentence(404, t('noPicture'));
    return pictureFile(
      `habit-${habit}`,
      t('picture.one', { habit: habitName(habit) }),
      effectDrawing(own, unit),
    );
  });
}

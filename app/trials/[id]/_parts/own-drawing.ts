import type { Drawing } from '@/app/_figures/drawing/drawing';
import type { OwnPart, TrialView } from '@/lib/access';
import { hangingDrawing } from './hanging-drawing';

/** The own hangings at each point. */
export function ownDrawing({ hangings }: OwnPart, { plan }: TrialView): Drawing {
  const [person = ''] = plan.people;
  const points = plan.points.map(({ name }) => name);
  return hangingDrawing({
    points,
    people: [person],
    cells: points.map((point) => ({
      person,
      point,
      means: hangings.filter((one) => one.point === point).map(({ mean }) => mean),
    })),
    tolerance: Math.min(...plan.points.map(({ tolerance }) => tolerance)),
  });
}

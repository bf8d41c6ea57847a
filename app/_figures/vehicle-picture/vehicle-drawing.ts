import { millimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { sized, type Drawing, type Shape } from '../drawing/drawing';
import { keyOf, moved } from './key';
import { linesOf } from './labels';
import { layoutOf, type Layout } from './measure';
import { inWords } from './in-words';
import { planView } from './plan-view';
import type { Scene, SceneRound } from './scene';
import { sideView } from './side-view';

/** Width of a picture on paper or at a desk, and of the form for a phone. */
export const WIDE = 640;
export const NARROW = 360;

/**
 * A round of a vehicle as a picture: from below, and from the left and the right side, with its signs explained and
 * its scale stated. All rounds of a scene are drawn to one scale. `earlier` lies under it, dashed.
 */
export function vehicleDrawing(
  scene: Scene,
  round: SceneRound,
  { width = WIDE, earlier = null }: { width?: number; earlier?: SceneRound | null } = {},
): Drawing {
  const layout = layoutOf(scene, width);
  const shapes: Shape[] = [];
  let height = 0;
  const add = (some: readonly Shape[], tall: number) => {
    shapes.push(...some.map((shape) => moved(shape, 0, height)));
    height += tall;
  };
  add(planView(scene, layout, round, earlier), layout.plan.height + 10);
  for (const side of ['L', 'R'] as const)
    if (scene.points.some((point) => point.side === side))
      add(sideView(scene, layout, side, round, earlier), layout.band.height);
  height += 4;
  for (const line of linesOf(scaleWords(layout), SMALL, layout.right - layout.left))
    add([sized(line, layout.left, 12, SMALL)], 18);
  height += 4;
  const key = keyOf(layout, round, earlier);
  add(key.shapes, key.height);
  return { width, height: Math.ceil(height), label: inWords(scene, round, earlier), shapes };
}

const SMALL = 12;

/** The scale of a picture in words, and where its bars end if they do. */
export function scaleWords({ exaggeration, limit, cut }: Layout): string {
  const t = words('jobs');
  const scale = t('picture.scale', { times: exaggeration });
  return cut ? `${scale} ${t('picture.cut', { limit: millimetres(limit, 0) })}` : scale;
}

import type { Drawing } from '@/app/_figures/drawing/drawing';
import { moved, vehicleDrawing, WIDE, type Scene } from '@/app/_figures/vehicle-picture';
import { sized } from '@/app/_figures/drawing/drawing';

export interface NamedDrawing {
  name: string;
  drawing: Drawing;
}

/** One drawing for each round, or a single one with the later round over the earlier. */
export function drawingsOf(scene: Scene, over: boolean, width = WIDE): NamedDrawing[] {
  const [first, second] = scene.rounds;
  if (over && first !== undefined && second !== undefined)
    return [
      {
        name: `${first.name} · ${second.name}`,
        drawing: vehicleDrawing(scene, second, { width, earlier: first }),
      },
    ];
  return scene.rounds.map((round) => ({
    name: round.name,
    drawing: vehicleDrawing(scene, round, { width }),
  }));
}

const GAP = 40;
const HEAD = 26;

/** All of them in one drawing, beside each other, for a file. */
export function together(drawings: readonly NamedDrawing[]): Drawing {
  let x = 0;
  const shapes = drawings.flatMap(({ name, drawing }) => {
    const at = x;
    x += drawing.width + GAP;
    return [
      sized(name, at, 14, 15, { strong: true }),
      ...drawing.shapes.map((shape) => moved(shape, at, HEAD)),
    ];
  });
  return {
    width: Math.max(0, x - GAP),
    height: HEAD + Math.max(0, ...drawings.map(({ drawing }) => drawing.height)),
    label: drawings.map(({ drawing }) => drawing.label).join(' '),
    shapes,
  };
}

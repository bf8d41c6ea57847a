import type { HabitKey } from '../keys';
import type { HabitText } from './text';

type Length = 'unequal-pointers' | 'pointer-width';

/** Habits of the tram gauge. */
export const LENGTH_TEXTS: Record<Length & HabitKey, HabitText> = {
  'unequal-pointers': {
    name: 'Pointers of unequal length',
    what: 'The two pointers of the tram are set to different lengths, so that the bar is not parallel to the line between the points.',
    shows:
      'Lengths read short, a short length by more than a long one: by the square of the difference over twice the length.',
    train:
      'Stand the tram on a flat plate: both tips must touch with the bar parallel to it. Set both pointers to the same mark before every round, and use the same tip at both ends.',
    lookalikes:
      'Damage that shortens mostly short lengths, as a front impact does; sheet values meant along the datum and not from point to point.',
  },
  'pointer-width': {
    name: 'Width of a pointer not compensated',
    what: 'A length is read from an inner to an outer edge, or with tips of different width, and the width of the pointer is not taken off.',
    shows: 'Lengths are off by the same amount, long or short, whatever their size.',
    train:
      'Measure edge to edge on the same side of both holes (left edge to left edge), or center both tips. Practise on a plate with holes of different size and a known distance.',
    lookalikes: 'A tram whose scale zero has moved (then every hand shows it with that tram); a worn tip.',
  },
};

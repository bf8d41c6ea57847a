import type { HabitKey } from '../keys';
import type { HabitText } from './text';

type Setting =
  'clearance-forgotten' | 'another-mark' | 'careless-zero' | 'low-hanger' | 'drift-in-round' | 'one-gauge';

/** Habits of setting and hanging a gauge. */
export const SETTING_TEXTS: Record<Setting & HabitKey, HabitText> = {
  'clearance-forgotten': {
    name: 'Clearance left out or added twice',
    what: 'The round number that is added to every height of a round is left out at a gauge, or added twice.',
    shows:
      "Both hangers of a setup are off by the same amount, and the amount is exactly the round's clearance.",
    train:
      'Write the clearance at the head of the sheet and add it to every height before the first gauge is set. Read the sum aloud while setting; the next gauge is set by the written sum, never by mental arithmetic.',
    lookalikes:
      'A sheet value that was typed with the clearance in it; damage that lifts or lowers both sides by just that much.',
  },
  'another-mark': {
    name: 'Another fixed mark',
    what: 'A gauge is set or read by a mark other than the one place that all heights are read to.',
    shows: 'Both hangers of a setup are off by one length that belongs to the gauge, time after time.',
    train:
      'Paint the fixed mark of every gauge in one colour. Before hanging, point at the mark on each gauge in turn; have a second person set one gauge and compare.',
    lookalikes:
      'A gauge that was mended with its mark in another place; a mis-set that happens to be of that size.',
  },
  'careless-zero': {
    name: 'Zero gauges set carelessly',
    what: 'The two gauges that carry the datum are set or hung wrong more often than by other hands.',
    shows:
      'The zero gauges themselves read well, but the other stations lie on a tilted straight line: the error grows with distance from the zero stations.',
    train:
      'Set both zero gauges, walk round the vehicle, set them once more from nothing, and go on only where both settings agree within half a millimetre. Only then hang the others.',
    lookalikes:
      'A hand that mis-sets any gauge more often than others do; damage of the center section at a zero point; a gauge at a zero station with a bent hanger rod.',
  },
  'low-hanger': {
    name: 'One hanger always low',
    what: 'The hanger of one side is set or seated lower than the other by about the same amount every time.',
    shows:
      'Left less right of a setup differs from zero by a steady amount over many vehicles, on all gauges, damaged or not.',
    train:
      'Set both hangers from the same side of the gauge, eye at the height of the scale. Exchange the hangers of one gauge, read again, and see whether the difference goes with the hanger or stays with the hand.',
    lookalikes:
      'A bent hanger rod (then only that gauge shows it, in every hand); a floor or lift that leans, where the round is levelled by it; the same damaged side on many vehicles.',
  },
  'drift-in-round': {
    name: 'Drift within a round',
    what: 'Settings change from the first gauge of a round to the last.',
    shows: 'Heights read higher, or lower, by a steady amount from one setup of the round to the next.',
    train:
      'Hang the gauges in another order than usual for some rounds, and re-hang the first gauge at the end: it should read what it read first. Rest before the last stations.',
    lookalikes:
      'A datum that is tilted the same way round after round, since gauges are hung from front to rear; a vehicle that settles on its stands; a string that slackens.',
  },
  'one-gauge': {
    name: 'One technician with one gauge',
    what: 'With one particular gauge this hand reads more, or less, than the hand and the gauge show apart.',
    shows:
      'Heights with that gauge are off in this hand, not in other hands, and not in this hand with other gauges.',
    train:
      'Watch this gauge being set and hung: where the scale is read from, which face of the pointer is used, how it is seated. Let another person hang the same gauge at the same point and compare.',
    lookalikes:
      'A gauge that changed for some weeks (dropped, mended) in which this hand used it most; a gauge that this hand hangs at one station only.',
  },
};

import type { HabitKey } from '../keys';
import type { HabitText } from './text';

type Reading = 'preferred-digits' | 'drawn-to-sheet' | 'repeats-alike' | 'no-rehang' | 'heights-first';

/** Habits of reading and of the order of work. */
export const READING_TEXTS: Record<Reading & HabitKey, HabitText> = {
  'preferred-digits': {
    name: 'Last digits preferred',
    what: 'Readings are rounded to favourite digits instead of being read to what the gauge shows.',
    shows:
      'Some last digits, mostly 0 and 5, come up far more often than by chance, and more often than in other hands on the same kind of gauge.',
    train:
      'Read the vernier or display to its last digit and say it aloud; another person writes it down. Ten readings of a reference length that ends in an odd digit show it at once.',
    lookalikes:
      'A gauge whose display shows halves only; readings that were typed in rounded from a paper sheet.',
  },
  'drawn-to-sheet': {
    name: 'Readings drawn to the sheet value',
    what: 'Readings near the sheet value are written down as the sheet value itself.',
    shows:
      'More readings lie within a quarter of a millimetre of the sheet value than the readings around them lead one to expect.',
    train:
      'Read blind: the sheet value is covered until the reading is written down. Say that a deviation of a millimetre within tolerance is what a good measurement looks like.',
    lookalikes:
      'A repair that was pulled with the gauge in place until it read the sheet value; copying the sheet where nothing was measured.',
  },
  'repeats-alike': {
    name: 'Repeats too alike to be real readings',
    what: 'The second and third reading are written down from the first instead of being read.',
    shows:
      'The same value stands for all repeats of a dimension more often than the scatter of this hand and the steps of the gauge allow.',
    train:
      'Take the eye off the scale between readings, and let another person write them down. Say what repeats are for: they show the uncertainty, they do not prove skill.',
    lookalikes:
      'An uncommonly steady hand; a gauge read in coarser steps than is known; a display that holds its value.',
  },
  'no-rehang': {
    name: 'No re-hang on a height out of tolerance',
    what: 'A height out of tolerance is left as it is instead of being hung and read again.',
    shows:
      'Of the heights that were out when first hung, fewer were hung again in the same round than in other hands.',
    train:
      'Make it a rule: what is out is hung again and read again before it is written as final, above all before anybody pulls. The next check on the job page says which gauge first.',
    lookalikes:
      'Vehicles whose damage was plain to see; rounds that were broken off; a shop rule that only some jobs are checked twice.',
  },
  'heights-first': {
    name: 'Heights read before the center section',
    what: 'Heights are read before the lengths of the center section have been measured, or without them.',
    shows: 'In a round the first height is older than the first length of the center section.',
    train:
      'Center section first: its lengths and diagonals, then the datum, then heights. A round sheet in that order, ticked line by line, is enough.',
    lookalikes:
      'Readings that were typed in another order than they were taken; a clock that was set in between; a sheet without center-section lengths.',
  },
};

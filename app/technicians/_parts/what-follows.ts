import type { Call } from '@/lib/assess';

/** What follows from a verdict beside its name, in a few words. */
export const WHAT_FOLLOWS: Record<Call, string> = {
  'nothing-found': '',
  'likely-gauge': 'Re-hang and read again.',
  'likely-body': 'Confirm it with a re-hang before anybody pulls.',
  'likely-both': 'Re-hang and read again.',
  undecided: 'Not told apart yet: re-hang and read again.',
};

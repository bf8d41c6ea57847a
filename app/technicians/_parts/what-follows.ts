import { words } from '@/app/_words/words';
import type { Call } from '@/lib/assess';

/** What follows from a verdict beside its name, in a few words; nothing where nothing was found. */
export const whatFollows = (call: Call): string =>
  call === 'nothing-found' ? '' : words('hand')(`rounds.follows.${call}`);

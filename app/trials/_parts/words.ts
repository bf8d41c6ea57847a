import { millimetres, percent } from '@/app/_words/numbers';
import type { TrialPurpose } from '@/lib/access';

export const trialAddress = (id: number) => `/trials/${id}`;

/** The question of a trial with the size that matters. */
export function purposeWords(asked: TrialPurpose): string {
  switch (asked.question) {
    case 'bias':
      return `Do two technicians differ by ${millimetres(asked.difference, decimals(asked.difference))}?`;
    case 'repeatability':
      return `How much does reading again scatter, to within ${asked.ratio} times?`;
    case 'setting':
      return `How much does setting scatter, to within ${asked.ratio} times?`;
    case 'training':
      return `Did a training bring the scatter down to ${percent(asked.ratio)}?`;
  }
}

const decimals = (value: number) => (Number.isInteger(value * 10) ? 1 : 2);

import { brief, millimetres, percent } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { TrialPurpose } from '@/lib/access';

export const trialAddress = (id: number) => `/trials/${id}`;

/** The question of a trial with the size that matters. */
export function purposeWords(asked: TrialPurpose): string {
  const t = words('trials');
  switch (asked.question) {
    case 'bias':
      return t('questions.bias', {
        size: millimetres(asked.difference, decimals(asked.difference)),
      });
    case 'repeatability':
      return t('questions.repeatability', { ratio: brief(asked.ratio, 4) });
    case 'setting':
      return t('questions.setting', { ratio: brief(asked.ratio, 4) });
    case 'training':
      return t('questions.training', { share: percent(asked.ratio) });
  }
}

const decimals = (value: number) => (Number.isInteger(value * 10) ? 1 : 2);

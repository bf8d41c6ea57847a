import { expect, test } from 'vitest';
import { beyondChanceWords } from '@/app/training/_parts/beyond-chance';

const found = (key: string, side: 'above' | 'below', value: number) => ({ key, side, value, others: 0.7 });

test('the differences beyond chance are named by code, with their sizes', () => {
  const words = beyondChanceWords(
    [found('FEL', 'below', 0.43), found('QUI', 'above', 0.97), found('WIN', 'above', 0.84)],
    'scatter',
    'technicians',
  );
  expect(words.replaceAll('\u00a0', ' ')).toBe(
    'Beyond chance, against the mean of the others: less scatter FEL (0.43 mm); more scatter QUI (0.97 mm), WIN (0.84 mm). Every other difference from that mean may be chance.',
  );
});

test('where there is none, the sentence says so', () => {
  expect(beyondChanceWords([], 'bias', 'gauges')).toBe(
    'No difference between these gauges is beyond chance.',
  );
});

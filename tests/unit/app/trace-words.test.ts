import '@/tests/speaking';
import { expect, test } from 'vitest';
import { subjectWords } from '@/app/settings/trace/_parts/entry-words';
import { speaking } from '@/app/_words/speech';
import { subjectOf } from '@/lib/store/trace/subjects';

test('a round in the trace is called as everywhere else', () => {
  const subject = subjectOf.round('K1', 'before', 2);
  expect(speaking({ language: 'en', units: 'mm' }, () => subjectWords(subject))).toBe(
    'job K1, Before, round 2',
  );
  expect(speaking({ language: 'de', units: 'mm' }, () => subjectWords(subject))).toBe(
    'Auftrag K1, Vorher, Durchgang 2',
  );
});

test('a setup keeps its name', () => {
  const subject = subjectOf.side('K1', 'B1-01', 'left');
  expect(speaking({ language: 'en', units: 'mm' }, () => subjectWords(subject))).toBe(
    'job K1, setup B1-01, side left',
  );
});

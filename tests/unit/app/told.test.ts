import { describe, expect, it } from 'vitest';
import { told } from '@/app/_words/told';

const sentence =
  'Hang the gauge at K again and read both sides; if the left side still reads 6.2 mm low, it is the body.';

describe('a sentence of the analysis', () => {
  it('stays as it is for who reads English and millimetres', () => {
    expect(told(sentence)).toBe(sentence);
  });

  it('is looked up with its gaps, and a gap with what stands in it', () => {
    expect(told(sentence, { language: 'de', units: 'mm' })).toBe(
      'Die Lehre bei K neu aufhängen und beide Seiten ablesen; liest die linke Seite dann immer noch 6,2 mm zu tief, ist es die Karosserie.',
    );
  });

  it('has its lengths in inches for who reads those', () => {
    // 6.2 / 25.4 = 0.2441 by hand.
    expect(told(sentence, { language: 'en', units: 'in' })).toContain('0.244 in low');
  });

  it('is taken apart where only its parts are known, and kept where nothing is', () => {
    const two = 'Hang the gauge at K again and read both sides. Nobody knows this one.';
    expect(told(two, { language: 'de', units: 'mm' })).toBe(
      'Die Lehre bei K neu aufhängen und beide Seiten ablesen. Nobody knows this one.',
    );
  });
});

import { describe, expect, it } from 'vitest';
import { told } from '@/app/_words/told';
import de from '@/app/_words/told/de.json';
import deRecords from '@/app/_words/told/de-records.json';

const sentence =
  'Hang the gauge at K again and read both sides; if the left side still reads 6.2 mm low, it is the body.';

describe('a sentence of the analysis', () => {
  it('stays as it is for who reads English and millimetres, a number kept with its unit', () => {
    expect(told(sentence)).toBe(sentence.replace('6.2 mm', '6.2\u00a0mm'));
  });

  it('has its signs as they stand elsewhere on the pages', () => {
    expect(told('It was last -0.05 mm off (± 0.12 mm).')).toBe(
      'It was last −0.05\u00a0mm off (±0.12\u00a0mm).',
    );
    expect(told('Two-sided CUSUM (k = 0.5) of each score.')).toBe(
      'Two-sided CUSUM (k\u00a0=\u00a00.5) of each score.',
    );
  });

  it('is looked up with its gaps, and a gap with what stands in it', () => {
    expect(told(sentence, { language: 'de', units: 'mm' })).toBe(
      'Die Lehre bei K neu aufhängen und beide Seiten ablesen; liest die linke Seite dann immer noch 6,2\u00a0mm zu tief, ist es die Karosserie.',
    );
  });

  it('has its lengths in inches for who reads those', () => {
    // 6.2 / 25.4 = 0.2441 by hand.
    expect(told(sentence, { language: 'en', units: 'in' })).toContain('0.244\u00a0in low');
  });

  it('has each of its sentences looked up by itself, so that no gap swallows the next one', () => {
    const text =
      'Of 41 jobs called right, 2.3 (0 to 5) are expected not to be. Of 9 jobs called not right, 3.1 (1 to 5) are expected to have been right; none of them was worked on again.';
    expect(told(text, { language: 'de', units: 'mm' })).toBe(
      'Von 41 Aufträgen, die richtig genannt wurden, sind es erwartungsgemäß 2,3 (0 bis 5) nicht. Von 9 Aufträgen, die nicht richtig genannt wurden, waren es erwartungsgemäß 3,1 (1 bis 5) doch; an keinem davon wurde noch einmal gearbeitet.',
    );
  });

  it('tells how many setups a figure rests on, within a sentence too', () => {
    const text =
      'Setting error (its scatter), the shop: 1.14 mm (528 setups) from 2026-05 on, against 1.62 mm (278 setups) before; the size of the change cannot be told yet. Noticed in 2026-08.';
    expect(told(text, { language: 'de', units: 'mm' })).toContain(
      '1,14\u00a0mm (528 Aufhängungen) ab Mai 2026, gegen 1,62\u00a0mm (278 Aufhängungen) zuvor',
    );
  });

  it('is taken apart where only its parts are known, and kept where nothing is', () => {
    const two = 'Hang the gauge at K again and read both sides. Nobody knows this one.';
    expect(told(two, { language: 'de', units: 'mm' })).toBe(
      'Die Lehre bei K neu aufhängen und beide Seiten ablesen. Nobody knows this one.',
    );
  });
});

describe('a refusal of the records', () => {
  const inGerman = (text: string) => told(text, { language: 'de', units: 'mm' });

  it('keeps what stands in the file as it is, and translates what it is called', () => {
    expect(inGerman('"lenght" is none of length, height, centerline. Did you mean length?')).toBe(
      '„lenght“ ist keines von length, height, centerline. Meinten Sie length?',
    );
    expect(inGerman('Reading 2 of height K L in setup b1 of job J-1 counts already.')).toBe(
      'Ablesung 2 von Höhe K links in Aufhängung b1 des Auftrags J-1 zählt schon.',
    );
  });
});

describe('the book of phrases', () => {
  it('translates with gaps that the sentence has', () => {
    const gaps = (text: string) => [...text.matchAll(/\{\w+\}/g)].map(([gap]) => gap);
    const lost = Object.entries({ ...deRecords, ...de }).filter(([template, translation]) =>
      gaps(translation).some((gap) => !template.includes(gap)),
    );
    expect(lost).toEqual([]);
  });
});

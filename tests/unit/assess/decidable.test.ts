import { describe, expect, it } from 'vitest';
import { assessRound, whyUndecidable } from '@/lib/assess/round';
import { knownShop } from '@/tests/simulation/known';
import { type Hung, type ReadLength, roundOf } from '@/tests/simulation/round';

/** Zero points C, D and E, F; a length is set with 0.8 mm and read with 0.5 mm: 1.645 · 0.943 = 1.55 mm. */
const hung: Hung[] = [
  { at: 1100, zero: true, left: 0, right: 0 },
  { at: 2600, zero: true, left: 0, right: 0 },
  { at: 0, left: 6.2, right: 0.4 },
  { at: 3100, left: 0.1, right: 0.2 },
];
const shop = knownShop();
const why = (lengths: ReadLength[]): string | null => whyUndecidable(roundOf({ hung, lengths }), shop);

describe('the center section carries the datum', () => {
  it('where no length of it was read', () => {
    expect(why([])).toBeNull();
  });

  it('where its lengths are out by less than tolerance and uncertainty together', () => {
    expect(why([{ point: 'C-E', deviation: 4.5, section: 'center' }])).toBeNull();
    expect(why([{ point: 'C-E', deviation: -4.5, section: 'center' }])).toBeNull();
  });

  it('not where one is out by more, with the length, the sense and the amount named', () => {
    const said = why([{ point: 'C-E', deviation: 4.6, section: 'center' }]);
    expect(said).toContain('C-E is 4.6 mm too long');
    expect(said).toContain('tolerance 3 mm, uncertainty 1.6 mm');
    expect(why([{ point: 'D-E', deviation: -7, section: 'center' }])).toContain('D-E is 7.0 mm too short');
  });

  it('is told by the ends of a length where the sheet states no section', () => {
    expect(why([{ point: 'C-F', deviation: 8 }])).toContain('C-F');
    expect(why([{ point: 'A-C', deviation: 8 }])).toBeNull();
  });

  it('whatever the lengths of other sections are', () => {
    expect(why([{ point: 'A-C', deviation: 20, section: 'front' }])).toBeNull();
  });

  it('by the last reading of a length, so that a first one that was wrong does not stand', () => {
    expect(
      why([
        { point: 'C-E', deviation: 9, section: 'center' },
        { point: 'C-E', deviation: 0.4, section: 'center' },
      ]),
    ).toBeNull();
    expect(
      why([
        { point: 'C-E', deviation: 0.4, section: 'center' },
        { point: 'C-E', deviation: 9, section: 'center' },
      ]),
    ).toContain('C-E');
  });

  it('with more readings at a smaller uncertainty', () => {
    expect(why([{ point: 'C-E', deviation: 4.45, section: 'center' }])).toBeNull();
    expect(why([{ point: 'C-E', deviation: 4.45, section: 'center', n: 5 }])).not.toBeNull();
  });
});

describe('two lengths of one name, left and right', () => {
  /** Both sides of the zero stations share the letters K and N. */
  const named = (deviations: number[]): string | null => {
    const round = roundOf({
      hung,
      lengths: deviations.map((deviation) => ({ point: 'C-E', deviation, section: 'center' as const })),
    });
    for (const setup of round.setups)
      for (const seen of setup.observations) if (seen.zero) seen.point = seen.station === 1100 ? 'C' : 'E';
    return whyUndecidable(round, shop);
  };

  it('do not hide behind each other', () => {
    expect(named([9, 0.2])).toContain('9.0 mm too long');
    expect(named([0.2, 9])).toContain('9.0 mm too long');
    expect(named([0.2, 0.4])).toBeNull();
  });
});

describe('a round whose center section is out', () => {
  const verdict = assessRound(
    roundOf({ hung, lengths: [{ point: 'C-E', deviation: 9, section: 'center' }] }),
    shop,
  );

  it('is undecidable, and says what to do first', () => {
    expect(verdict.decidable).toBe(false);
    expect(verdict.why).toContain('restore the center section first');
  });

  it('still shows what its heights would be', () => {
    expect(verdict.heights.length).toBe(8);
  });
});

describe('a round without a datum', () => {
  it.each([
    { zeros: 0, list: hung.slice(2) },
    { zeros: 1, list: hung.slice(1) },
    { zeros: 3, list: [...hung, { at: 1900, zero: true, left: 0, right: 0 }] },
  ])('of $zeros zero stations is undecidable and has no verdict', ({ zeros, list }) => {
    const verdict = assessRound(roundOf({ hung: list }), shop);
    expect(verdict.decidable).toBe(false);
    expect(verdict.why).toContain(
      zeros === 1 ? 'One zero station was measured' : `${zeros} zero stations were`,
    );
    expect(verdict.heights).toEqual([]);
    expect(verdict.nextChecks).toEqual([]);
  });

  it('and without any height has no verdict on heights either', () => {
    const verdict = assessRound(roundOf({ hung: [], lengths: [{ point: 'K-N', deviation: 1 }] }), shop);
    expect(verdict.heights).toEqual([]);
    expect(verdict.nextChecks).toEqual([]);
  });
});

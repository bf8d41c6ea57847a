import '@/tests/speaking';
import { buffer } from 'node:stream/consumers';
import { describe, expect, it } from 'vitest';
import { pdfOf } from '@/app/_record';
import { compared, lastOf } from '@/app/jobs/[job]/record/_parts/compared';
import { recordedRound, type JobRecord, type RecordedRound } from '@/app/jobs/[job]/record/_parts/gather';
import { recordDocument } from '@/app/jobs/[job]/record/_parts/record-document';
import { cautions } from '@/app/_words/cautions';
import { bareMillimetres, probability, signed } from '@/app/_words/numbers';
import { speaking, type Speech } from '@/app/_words/speech';
import { callName } from '@/app/_words/verdicts';
import { assessRound } from '@/lib/assess';
import type { Job, Reading, Round } from '@/lib/measure';
import { conformity } from '@/lib/stats';
import { readPdf, running, type PdfText } from '@/tests/pdf-text';
import { knownShop } from '@/tests/simulation/known';
import { simulateShop } from '@/tests/simulation/shop';

const learned = knownShop();
const AT = Date.UTC(2026, 2, 14, 9, 30);

/** One reading for each mean of a simulated round. */
const readingsOf = (round: Round): Reading[] =>
  round.setups.flatMap((setup) =>
    setup.observations.map((seen, index) => ({
      ...seen,
      ...{ line: index + 2, job: round.job, sheet: round.sheet, stage: round.stage, attempt: round.attempt },
      ...{ technician: setup.technician, gauge: setup.gauge, gaugeKind: setup.gaugeKind },
      ...{ setup: setup.label, clearance: round.clearance, repeat: 1 },
      value: seen.nominal + (seen.quantity === 'height' ? round.clearance : 0) + seen.deviation,
    })),
  );

const setupsOf = ({ rounds }: Job): number => rounds.reduce((sum, { setups }) => sum + setups.length, 0);

const { jobs } = simulateShop({ seed: 4, jobs: 12 });
/** The smallest job that was measured before and after. */
const job = jobs
  .filter(({ rounds }) => new Set(rounds.map(({ stage }) => stage)).size === 2)
  .sort((a, b) => setupsOf(a) - setupsOf(b))[0];
if (job === undefined) throw new Error('The simulated shop has no job with both.');

const ALL = job.rounds.map((round) =>
  recordedRound(round, {
    ...{ verdict: assessRound(round, learned), learned, missCost: 9 },
    readings: readingsOf(round),
  }),
);

function recordWith(more: Partial<JobRecord> = {}, rounds: readonly RecordedRound[] = ALL): JobRecord {
  return {
    shop: { name: 'Body shop', timeZone: 'UTC' },
    row: { job: 'K1', sheet: 'Estate', outcome: 'wrong' },
    rounds: [...rounds],
    ...{ scene: null, hidden: 0, fit: { fittedAt: AT, stale: false }, outcomes: [], revisions: [] },
    ...{ outOfService: [], missCost: 9, printed: { at: AT, by: 'GRE' } },
    ...more,
  };
}

const printedFor = (speech: Speech, record: JobRecord): Promise<PdfText> =>
  speaking(speech, async () => readPdf(await buffer(pdfOf(recordDocument(record)))));

/** The whole record in English, printed once for all that is asked of it. */
let printedOnce: Promise<PdfText> | undefined;
const inEnglish = () => (printedOnce ??= printedFor(english, recordWith()));

const english: Speech = { language: 'en', units: 'mm' };
const germanInches: Speech = { language: 'de', units: 'in' };

describe('the record of a job', () => {
  it.each([
    ['in English and millimetres', english],
    ['in German and inches', germanInches],
  ])('gives every dimension as its page does, with uncertainty and how sure it is, %s', async (_, speech) => {
    const record = recordWith();
    const text = running((await (speech === english ? inEnglish() : printedFor(speech, record))).pages);
    speaking(speech, () => {
      const rows = compared(lastOf(record.rounds, 'before'), lastOf(record.rounds, 'after'));
      expect(rows.length).toBeGreaterThan(10);
      for (const held of rows.flatMap(({ before, after }) => [before, after]).filter((one) => one !== null)) {
        const { read, uncertainty, dimension } = held;
        const cell = `${bareMillimetres(read)} ${signed(dimension.deviation)} ±${bareMillimetres(2 * (uncertainty ?? NaN))}`;
        expect(text).toContain(cell);
      }
      for (const { heights } of record.rounds)
        for (const { setup, gauge, technician, deviation } of heights)
          expect(text).toContain(`${setup}, ${gauge}, ${technician} ${signed(deviation)}`);
      for (const { title, text: said } of cautions()) {
        expect(text).toContain(title);
        expect(text).toContain(said);
      }
    });
  });

  it('tells the four probabilities of every height, and what follows from each verdict', async () => {
    const text = running((await inEnglish()).pages);
    const told = ALL.flatMap(({ heights }) => heights).filter(({ verdict }) => verdict !== null);
    expect(told.length).toBeGreaterThan(10);
    for (const { verdict, call } of told) {
      const { neither, gauge, body, both } = verdict?.p ?? { neither: 0, gauge: 0, body: 0, both: 0 };
      const four = [neither, gauge, body, both].map((p) => probability(p).replaceAll('\u00a0', ' '));
      expect(text).toContain(four.join(' '));
      expect(text).toContain(callName(call));
    }
    if (told.some(({ call }) => call === 'likely-gauge'))
      expect(text).toContain('Likely the gauge: re-hang it and read again.');
  });

  it('says in or out by the probability of JCGM 106 where the datum is trusted, and of zero stations nothing', () => {
    const rounds = recordWith().rounds;
    const held = compared(lastOf(rounds, 'before'), lastOf(rounds, 'after')).flatMap(
      ({ after }) => after ?? [],
    );
    for (const { dimension, uncertainty, sure } of held) {
      const { deviation: value, tolerance, quantity, zero, within } = dimension;
      if (quantity === 'height' && zero) expect(sure).toBeNull();
      if (sure === null || uncertainty === null) continue;
      const { probability: p } = conformity({ value, uncertainty, lower: -tolerance, upper: tolerance });
      expect(sure).toBeCloseTo(within ? p : 1 - p, 12);
    }
    expect(held.some(({ sure }) => sure !== null)).toBe(true);
  });

  it('says what is not known: rounds that are missing or not the viewer’s, figures that are not there', async () => {
    const before = ALL.filter(({ round }) => round.stage === 'before');
    const record = recordWith({ hidden: 2, fit: null, outOfService: ['CG9'] }, before);
    const text = running((await printedFor(english, record)).pages);
    expect(text).toContain('There is no round after the repair');
    expect(text).toContain('2 rounds of this job are not on this print');
    expect(text).toContain('uncertainties are not known');
    expect(text).toContain('out of service until verified: CG9');
  });

  it('tells re-checks, and readings corrected or excluded with who and why', async () => {
    const [round] = job.rounds;
    const setup = round?.setups.find(({ observations }) => observations.some(({ side }) => side === 'L'));
    const seen = setup?.observations.find(({ side }) => side === 'L');
    if (setup === undefined || seen === undefined) throw new Error('The job has no height on the left.');
    const place = {
      job: 'K1',
      setup: setup.label,
      quantity: seen.quantity,
      point: seen.point,
      side: seen.side,
    };
    const revision = { ...place, nominal: seen.nominal, repeat: 1, takenAt: AT, file: null, line: null };
    const text = running(
      (
        await printedFor(
          english,
          recordWith({
            outcomes: [
              {
                job: 'K1',
                setup: setup.label,
                side: 'L',
                cause: 'gauge',
                by: 'QUI',
                at: AT,
                note: 'wrong mark',
              },
            ],
            revisions: [
              {
                ...revision,
                revision: 1,
                value: 100,
                excluded: false,
                reason: null,
                by: null,
                enteredAt: null,
              },
              {
                ...revision,
                revision: 2,
                value: 101,
                excluded: true,
                reason: 'misread',
                by: 'HOL',
                enteredAt: AT,
              },
            ],
          }),
        )
      ).pages,
    );
    expect(text).toContain('the gauge QUI 14 Mar 2026, 09:30 wrong mark');
    expect(text).toMatch(/101\.0 excluded HOL 14 Mar 2026, 09:30 misread/);
    expect(text).toContain('100.0 replaced a file');
    expect(text).toContain('1 excluded');
  });

  it('names who printed it and when, and leaves room for who judges', async () => {
    const { pages, title } = await inEnglish();
    expect(title).toBe('Job K1: record of measurements');
    for (const page of pages) expect(page).toContain('Printed 14 Mar 2026, 09:30 by GRE');
    expect(pages.at(-1)).toContain('Licence or certificate, number');
    expect(running(pages)).toContain('it is never a clearance of the structure');
  });
});

import '@/tests/speaking';
import { buffer } from 'node:stream/consumers';
import { describe, expect, it } from 'vitest';
import type { JudgedRound } from '@/app/_overview/attention';
import { pdfOf, type PrintedDocument } from '@/app/_record';
import type { MonthLetter } from '@/app/rates/letter/_parts/gather';
import { letterDocument } from '@/app/rates/letter/_parts/letter-document';
import type { TalkSheet } from '@/app/technicians/[code]/sheet/_parts/gather';
import { talkDocument } from '@/app/technicians/[code]/sheet/_parts/talk-document';
import { percent } from '@/app/_words/numbers';
import { speaking } from '@/app/_words/speech';
import type { Gauge } from '@/lib/access';
import type { TechnicianFigures } from '@/lib/assess';
import type { HabitCell } from '@/lib/assess/habits';
import { fairRates, type RateJob } from '@/lib/assess/rates';
import { readPdf, running } from '@/tests/pdf-text';

const AT = Date.UTC(2026, 3, 2, 8);
const shop = { name: 'Body shop', timeZone: 'UTC' };
const textOf = async (document: PrintedDocument): Promise<string> =>
  running((await readPdf(await buffer(pdfOf(document)))).pages);

describe('the letter for a month', () => {
  const jobs = Array.from({ length: 90 }, (_, i): RateJob => ({
    ...{ job: `J${i}`, technician: 'T1', sheet: 'S1', gauges: ['G1'], right: i % 3 !== 0, sections: [] },
    month: ['2026-01', '2026-02', '2026-03'][Math.floor(i / 30)] ?? '',
    start: { measured: true, out: 1, size: 1, zone: 'front' },
  }));
  const months = fairRates(jobs, 'month').groups;
  const letter: MonthLetter = {
    ...{ shop, months, month: '2026-03', jobs: jobs.filter(({ month }) => month === '2026-03') },
    ...{
      risk: null,
      departures: [],
      habits: [],
      excluded: 3,
      newest: AT,
      fit: { fittedAt: AT, stale: false },
    },
    signals: {
      quiet: null,
      signals: ['2026-03', '2026-05'].map((noticed) => ({
        ...{ what: 'right-first-time', subject: { kind: 'shop', name: null }, direction: 'worse', noticed },
        ...{ began: null, size: null, p: 0.01, evidence: `Noticed in ${noticed}.`, next: 'Open the jobs.' },
      })),
      design: {
        ...{ falseAlarmPeriods: 24, charts: 1, runLength: 48, falseAlarmJobs: null, lambda: 0.2, k: 0.5 },
        method: '',
      },
    },
    attention: {
      ...{ open: [], undecidable: [] },
      gauges: [
        { tag: 'CG1', kind: 'centering', fixedMark: null, state: 'out-of-service', verifiedAt: null },
        { tag: 'TD1', kind: 'tram', fixedMark: null, state: 'in-service', verifiedAt: 0 },
      ],
    },
    ...{ missCost: 9, printed: { at: AT, by: 'GRE' } },
  };

  let printedOnce: Promise<string> | undefined;
  const printed = () => (printedOnce ??= textOf(letterDocument(letter)));

  it('gives the month and those before it with the numbers of the rates page', async () => {
    const text = await printed();
    const plain = (value: number) => percent(value).replaceAll('\u00a0', ' ');
    for (const { right, jobs: of, rate, low, high } of months)
      expect(text).toContain(
        `${right} of ${of} ${plain(rate ?? NaN)} ${plain(low ?? NaN)} to ${plain(high ?? NaN)}`,
      );
    expect(text).toContain('In Mar 2026 30 jobs came to an answer, and 20 were right first time');
    expect(text).toContain('Of all 60 jobs in the months before 40 were');
    expect(text).toContain('may be chance');
    expect(text).toContain('3 readings are excluded');
  });

  it('tells of signals only those noticed by then, and of each gauge what to do next', async () => {
    const text = await printed();
    expect(text).toContain('Noticed in Mar 2026.');
    expect(text).not.toContain('Noticed in May 2026.');
    expect(text).toContain('1 signal that was noticed in a later month is left out here.');
    expect(text).toContain('CG1 Out of service never Verify it before it is hung again.');
    expect(text).toContain('TD1 Verification overdue');
  });

  it('stays within two pages however much there is to tell, and says how much it left to the pages', async () => {
    const many = <T>(make: (i: number) => T): T[] => Array.from({ length: 30 }, (_, i) => make(i));
    const [signal] = letter.signals?.signals ?? [];
    if (letter.signals === null || signal === undefined) throw new Error('There is no signal to repeat.');
    const round = (i: number): JudgedRound => ({
      ...{ job: `J${i}`, stage: 'before', attempt: 1, at: AT, heights: [], centerline: [] },
      ...{
        decidable: false,
        why: 'Center-section diagonal A–D is 9.0 mm out: set the center section right first.',
      },
      ...{ nextChecks: [], pZeroMisset: 0, datum: [], leftOut: 0 },
    });
    const full: MonthLetter = {
      ...letter,
      signals: {
        ...letter.signals,
        signals: many((i) => ({
          ...signal,
          evidence: `Series ${i} left its band in the month before and stays there.`,
        })),
      },
      attention: {
        open: [],
        undecidable: many(round),
        gauges: [
          ...many((i): Gauge => ({
            ...{
              tag: `CG${i}`,
              kind: 'centering',
              fixedMark: null,
              state: 'out-of-service',
              verifiedAt: null,
            },
          })),
          { tag: 'TD1', kind: 'tram', fixedMark: null, state: 'in-service', verifiedAt: 0 },
        ],
      },
      departures: many((i) => ({
        ...{ technician: `T${i}`, of: 'setting' as const },
        words: 'Setting error 1.90 mm (1.60 to 2.30), the shop 1.10 mm (1.00 to 1.20).',
      })),
      habits: many((i): HabitCell => ({
        ...{
          technician: `T${i}`,
          habit: 'preferred-digits',
          state: 'found',
          p: 0.001,
          adjustedP: 0.01,
          strength: 2,
        },
        ...{ effect: null, evidence: '', setups: 40, shownBy: [] },
      })),
    };
    const { pages } = await readPdf(await buffer(pdfOf(letterDocument(full))));
    expect(pages.length).toBeLessThanOrEqual(2);
    const text = running(pages);
    for (const rest of ['more signals', 'more rounds', 'more technicians', 'more gauges', 'more, on'])
      expect(text).toContain(rest);
    // A gauge that is in use unverified comes before those that hang nowhere.
    expect(text).toMatch(/Next TD1 Verification overdue/);
  });
});

describe('the sheet for a training talk', () => {
  const sd = { sd: 0.5, df: 120, low: 0.45, high: 0.56, why: null };
  const own: TechnicianFigures = {
    ...{ technician: 'QUI', readings: 400, setups: 160, jobs: 12, repeatability: sd, habits: [] },
    setting: { ...sd, sd: null, low: null, high: null, why: 'Nothing was hung twice.' },
    bias: { mean: -0.31, low: -0.5, high: -0.12, why: null },
    firstTimeRight: {
      ...{ jobs: 12, right: 9, rate: 0.75, low: 0.47, high: 0.91, why: null, expected: 8.2, shrunk: 0.7 },
    },
  };
  const sheet: TalkSheet = {
    ...{ shop, own, hand: null, shownBy: new Map() },
    person: { code: 'QUI', name: 'Somebody', role: 'technician', active: true },
    fit: { fittedAt: AT, stale: false },
    band: { repeatability: { ...sd, sd: 0.6 }, setting: { ...sd, sd: 0.9 } },
    changes: [
      {
        ...{ what: 'setting-bias', subject: { kind: 'technician', name: 'QUI' }, direction: 'worse' },
        ...{ noticed: '2026-03', began: null, size: null, p: 0.001 },
        evidence: 'Setting error (its mean), technician QUI: beyond its limit since 2026-03.',
        next: 'Let technician QUI and another technician hang the same gauges.',
      },
    ],
    habits: [],
    rounds: [
      {
        ...{ job: 'K7', stage: 'after', attempt: 1, why: null, at: AT, heights: 8 },
        doubtful: [
          {
            ...{ setup: 'A1-03', point: 'K', side: 'L', deviation: 6.2, call: 'likely-gauge', proved: null },
            p: { neither: 0.02, gauge: 0.95, body: 0.01, both: 0.02 },
          },
        ],
      },
    ],
    printed: { at: AT, by: 'HOL' },
  };

  let printedOnce: Promise<string> | undefined;
  const printed = () => (printedOnce ??= textOf(talkDocument(sheet)));

  it('gives each figure with its interval, or why it has none, beside the shop without names', async () => {
    const text = await printed();
    expect(text).toContain('Reading again 0.50 (0.45 to 0.56) 0.60 (0.45 to 0.56) 120 repeats');
    expect(text).toContain('Nothing was hung twice.');
    expect(text).toContain('Bias of heights −0.31 (−0.50 to −0.12)');
    expect(text).toContain('Right first time: 75 % (47 % to 91 %), 9 of 12 jobs.');
  });

  it('tells what changed beyond chance, and what to do next', async () => {
    const text = await printed();
    expect(text).toContain('Changes beyond chance Setting error (its mean), technician QUI');
    expect(text).toContain('since Mar 2026');
    expect(text).toContain('Next: Let technician QUI and another technician hang the same gauges.');
    expect(await textOf(talkDocument({ ...sheet, changes: [] }))).not.toContain('beyond chance');
  });

  it('ends what is likely the gauge in re-hanging and reading again, and leaves room for what is agreed', async () => {
    const text = await printed();
    expect(text).toContain('K left +6.2 mm (A1-03): likely gauge; gauge off 97 %, body off 3 %.');
    expect(text).toContain('Likely the gauge: re-hang it and read again.');
    expect(text).toContain('What we agreed');
    expect(text).toContain('Trainer, date');
  });

  it('speaks the reader’s language and units', async () => {
    const text = await speaking({ language: 'de', units: 'in' }, () => textOf(talkDocument(sheet)));
    // 0.50 mm are 0.0197 in, 25.4 mm to the inch.
    expect(text).toContain('Neu ablesen 0,0197 (0,0177 bis 0,0220)');
    expect(text).toContain('Wohl die Lehre: neu aufhängen und neu ablesen.');
  });
});

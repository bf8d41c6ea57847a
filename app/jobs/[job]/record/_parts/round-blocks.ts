import { placeSaid, roundSaid } from '@/app/_record/trade';
import { dimensionName } from '@/app/_words/dimensions';
import { causeProved } from '@/app/_words/proved';
import { callName, callSentence } from '@/app/_words/verdicts';
import type { Block, PrintedCell, PrintedRow } from '@/app/_record';
import type { HeightRow } from '@/app/jobs/[job]/_parts/heights';
import { ZERO_LIKELY_MISSET, zeroFirst } from '@/app/jobs/[job]/_parts/zero-first';
import { sureFrom } from '@/app/_shop/miss-cost';
import {
  bareMillimetres,
  decimal,
  millimetres,
  percent,
  probability,
  signed,
  unit,
} from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { callOf, type Call, type HeightVerdict } from '@/lib/assess';
import { CAUSES, deviationOf, dimensionKey, type Cause, type Reading, type Round } from '@/lib/measure';
import type { JobRecord, RecordedRound } from './gather';
import { rehangNames } from './open-heights';

/** One round: what is thought of its datum and heights, its picture, and every reading behind it. */
export function roundBlocks(record: JobRecord, recorded: RecordedRound, isLast: boolean): Block[] {
  const t = words('record');
  const { round } = recorded;
  return [
    { kind: 'heading', level: 2, text: roundSaid(round) },
    { kind: 'paragraph', text: note(round, record.shop.timeZone) },
    ...datumBlocks(recorded),
    ...verdictBlocks(record, recorded),
    ...(isLast ? nextBlocks(recorded) : []),
    {
      kind: 'table',
      caption: t('readings.caption', { unit: unit() }),
      columns: [
        { head: t('readings.setup'), width: 17 },
        { head: t('readings.gauge'), width: 16 },
        { head: t('readings.technician'), width: 16 },
        { head: t('readings.when'), width: 32 },
        { head: t('readings.dimension'), width: 28 },
        { head: t('readings.read'), width: 44, numeric: true },
        { head: t('readings.deviation'), width: 34, numeric: true },
      ],
      rows: readingRows(recorded, record.shop.timeZone),
      empty: t('round.noSetups'),
    },
  ];
}

function note({ setups, clearance }: Round, timeZone: string): string {
  const [first] = setups;
  if (first === undefined) return words('record')('round.noSetups');
  return words('record')('round.note', {
    when: dayAndTime(first.takenAt, timeZone),
    technicians: [...new Set(setups.map(({ technician }) => technician))].join(', '),
    clearance: millimetres(clearance, 0),
  });
}

/** Whether the datum can be trusted: the center section first, then the zero gauges. */
function datumBlocks({ verdict, heights }: RecordedRound): Block[] {
  const t = words('record');
  if (verdict === null)
    return heights.length === 0 ? [] : [{ kind: 'paragraph', text: t('round.notJudged') }];
  if (!verdict.decidable)
    return [
      { kind: 'caution', title: t('round.undecidable'), text: t('round.undecidableText') },
      ...(verdict.why === null ? [] : [{ kind: 'paragraph', text: told(verdict.why) } as const]),
    ];
  if (!heights.some(({ zero }) => zero)) return [];
  const p = probability(verdict.pZeroMisset);
  return [
    verdict.pZeroMisset < ZERO_LIKELY_MISSET
      ? { kind: 'paragraph', text: t('round.datum', { p }) }
      : { kind: 'caution', title: t('round.datumLikely', { p }), text: t('round.datumLikelyText') },
  ];
}

const COLUMNS = [
  { key: 'setup', width: 29 },
  { key: 'deviation', width: 19, numeric: true },
  { key: 'verdict', width: 33 },
  { key: 'neither', width: 14, numeric: true },
  { key: 'gauge', width: 14, numeric: true },
  { key: 'body', width: 16, numeric: true },
  { key: 'both', width: 14, numeric: true },
  { key: 'gaugePart', width: 16, numeric: true },
  { key: 'bodyPart', width: 16, numeric: true },
] as const;

function verdictBlocks({ missCost }: JobRecord, { round, verdict, heights }: RecordedRound): Block[] {
  const t = words('record');
  const pins = verdict?.centerline ?? [];
  const heads = (first: string) => [
    { head: first, width: 28 },
    ...COLUMNS.map(({ key, ...column }) => ({ head: t(`verdicts.${key}`), ...column })),
  ];
  const pinCall = (p: Record<Cause, number>): Call =>
    verdict?.decidable === false ? 'undecided' : callOf(p, missCost);
  const calls = new Set([...heights.map(({ call }) => call), ...pins.map(({ p }) => pinCall(p))]);
  return [
    ...(heights.length === 0
      ? []
      : [
          {
            kind: 'table',
            caption: t('verdicts.caption', { unit: unit() }),
            columns: heads(t('verdicts.height')),
            rows: heights.map((row) => ({ cells: heightCells(row, causeOf(round, row)) })),
          } as const,
        ]),
    ...(pins.length === 0
      ? []
      : [
          {
            kind: 'table',
            caption: t('verdicts.centerline', { unit: unit() }),
            columns: heads(t('verdicts.pin')),
            rows: pins.map((pin) => ({
              cells: [
                pin.point,
                `${pin.setup}, ${pin.gauge}, ${pin.technician}`,
                signed(pin.deviation),
                callName(pinCall(pin.p)),
                ...toldCells(pin),
              ],
            })),
          } as const,
        ]),
    ...(verdict === null || calls.size === 0
      ? []
      : [
          {
            kind: 'list',
            items: [...calls].map((call) => ({ lead: `${callName(call)}:`, text: callSentence(call) })),
          } as const,
          {
            kind: 'paragraph',
            aside: true,
            text: t('verdicts.how', { sure: percent(sureFrom(missCost)) }),
          } as const,
        ]),
  ];
}

function heightCells(row: HeightRow, cause: Cause | null): PrintedCell[] {
  const t = words('record');
  const place = placeSaid(row);
  const named = row.zero ? t('compared.zeroName', { name: place }) : place;
  return [
    row.last ? named : t('verdicts.earlier', { name: named }),
    `${row.setup}, ${row.gauge}, ${row.technician}`,
    signed(row.deviation),
    { text: verdictSaid(row, cause), strong: row.call !== 'nothing-found' },
    ...(row.verdict === null ? ['', '', '', '', '', ''] : toldCells(row.verdict)),
  ];
}

function verdictSaid({ verdict, call }: HeightRow, cause: Cause | null): string {
  const t = words('record');
  if (verdict === null) return t('verdicts.notJudged');
  const { signature } = verdict;
  const called =
    signature === null ? callName(call) : t('verdicts.slip', { call: callName(call), slip: told(signature) });
  return cause === null ? called : t('verdicts.proved', { call: called, cause: causeProved(cause) });
}

const toldCells = ({ p, misset, body }: Pick<HeightVerdict, 'p' | 'misset' | 'body'>): string[] => [
  ...CAUSES.map((cause) => probability(p[cause])),
  signed(misset),
  signed(body),
];

/** What a re-check proved of a height of one setup, or null. */
function causeOf({ setups }: Round, { setup, point, side }: HeightRow): Cause | null {
  const seen = setups
    .find(({ label }) => label === setup)
    ?.observations.find((one) => one.quantity === 'height' && one.point === point && one.side === side);
  return seen?.cause ?? null;
}

/** The check that would tell most, said from what it does. */
function nextBlocks({ verdict, heights }: RecordedRound): Block[] {
  if (verdict?.decidable !== true || heights.length === 0) return [];
  const t = words('record');
  const lead = `${t('round.next')}:`;
  const [first] = zeroFirst(verdict);
  const rehang = rehangNames(heights);
  if (first === undefined)
    return [
      {
        kind: 'paragraph',
        lead,
        text: rehang.length === 0 ? t('round.nextNone') : t('round.nextRehang', { names: rehang.join('; ') }),
      },
    ];
  const minutes = Math.round(first.minutes);
  const cost =
    verdict.pZeroMisset < ZERO_LIKELY_MISSET
      ? t('round.nextBits', { minutes, bits: decimal(first.gainBits, 2) })
      : t('round.nextZero', { minutes });
  return [{ kind: 'paragraph', lead, text: `${told(first.words)} ${cost}` }];
}

/** A row for each dimension of each setup, with its repeats as they were read. */
function readingRows({ round, readings }: RecordedRound, timeZone: string): PrintedRow[] {
  return round.setups.flatMap(({ label, gauge, technician, takenAt }) =>
    byDimension(readings.filter(({ setup }) => setup === label)).map((repeats) => ({
      cells: [
        ...[label, gauge, technician, dayAndTime(takenAt, timeZone), dimensionName(repeats[0])],
        repeats.map(({ value }) => bareMillimetres(value)).join('; '),
        repeats.map((reading) => signed(deviationOf(reading))).join('; '),
      ],
    })),
  );
}

/** The repeats of each dimension together, in the order they were first read. */
function byDimension(readings: readonly Reading[]): [Reading, ...Reading[]][] {
  const groups = new Map<string, [Reading, ...Reading[]]>();
  for (const reading of readings) {
    const key = dimensionKey(reading);
    const before = groups.get(key);
    if (before === undefined) groups.set(key, [reading]);
    else before.push(reading);
  }
  return [...groups.values()];
}

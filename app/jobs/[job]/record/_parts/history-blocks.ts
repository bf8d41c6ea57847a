import { listed, placeSaid, roundSaid } from '@/app/_record/trade';
import { dimensionName } from '@/app/_words/dimensions';
import { causeProved } from '@/app/_words/proved';
import type { Block } from '@/app/_record';
import { sameReading } from '@/app/jobs/[job]/readings/_parts/revision-table';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { RecheckOutcome, ReadingRevision } from '@/lib/access';
import type { JobRecord, RecordedRound } from './gather';

/** What re-checks showed: recorded outcomes, and gauges hung again within a round. */
export function recheckBlocks({ outcomes, rounds, shop: { timeZone } }: JobRecord): Block[] {
  const t = words('record');
  const rehung = rounds.flatMap(rehungIn);
  return [
    { kind: 'heading', level: 2, text: t('rechecks.title') },
    {
      kind: 'table',
      caption: t('rechecks.caption'),
      columns: [
        { head: t('rechecks.height'), width: 34 },
        { head: t('rechecks.cause'), width: 30 },
        { head: t('rechecks.by'), width: 20 },
        { head: t('rechecks.when'), width: 34 },
        { head: t('rechecks.note'), width: 56 },
      ],
      rows: outcomes.map((outcome) => ({
        cells: [
          `${heightOf(rounds, outcome)} (${outcome.setup})`,
          causeProved(outcome.cause),
          outcome.by ?? t('rechecks.file'),
          dayAndTime(outcome.at, timeZone),
          outcome.note ?? '',
        ],
      })),
      empty: t('rechecks.none'),
    },
    ...(rehung.length === 0
      ? []
      : [{ kind: 'paragraph', text: t('rechecks.rehung', { names: listed(rehung) }) } as const]),
  ];
}

function heightOf(rounds: readonly RecordedRound[], { setup, side }: RecheckOutcome): string {
  const seen = rounds
    .flatMap(({ round }) => round.setups)
    .find(({ label }) => label === setup)
    ?.observations.find((one) => one.side === side);
  return seen === undefined ? '?' : placeSaid(seen);
}

/** Heights that were hung more than once in a round. */
function rehungIn({ round, heights }: RecordedRound): string[] {
  const again = new Set(heights.filter(({ last }) => !last).map(placeSaid));
  return again.size === 0 ? [] : [`${roundSaid(round)}: ${[...again].join(', ')}`];
}

/** Every value of a reading that was changed, with who, when and why. */
export function revisionBlocks({ revisions, shop: { timeZone } }: JobRecord): Block[] {
  const t = words('record');
  return [
    { kind: 'heading', level: 2, text: t('revisions.title') },
    {
      kind: 'table',
      caption: t('revisions.caption', { unit: unit() }),
      columns: [
        { head: t('revisions.setup'), width: 20 },
        { head: t('revisions.dimension'), width: 28 },
        { head: t('revisions.repeat'), width: 14, numeric: true },
        { head: t('revisions.value'), width: 17, numeric: true },
        { head: t('revisions.state'), width: 20 },
        { head: t('revisions.by'), width: 16 },
        { head: t('revisions.when'), width: 32 },
        { head: t('revisions.why'), width: 40 },
      ],
      rows: revisions.map((one) => ({
        cells: [
          one.setup,
          dimensionName(one),
          String(one.repeat),
          bareMillimetres(one.value),
          t(`revisions.${stateOf(one, revisions)}`),
          one.by ?? t('revisions.file'),
          dayAndTime(one.enteredAt ?? one.takenAt, timeZone),
          one.reason ?? '',
        ],
      })),
      empty: t('revisions.none'),
    },
  ];
}

function stateOf(one: ReadingRevision, all: readonly ReadingRevision[]): 'counts' | 'replaced' | 'excluded' {
  if (all.some((other) => sameReading(one, other) && other.revision > one.revision)) return 'replaced';
  return one.excluded ? 'excluded' : 'counts';
}

/** How many readings are left out by now. */
export const excludedIn = (revisions: readonly ReadingRevision[]): number =>
  revisions.filter((one) => stateOf(one, revisions) === 'excluded').length;

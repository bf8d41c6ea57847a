import { listed, placeSaid, roundSaid } from '@/app/_record/trade';
import type { Block } from '@/app/_record';
import { ZERO_LIKELY_MISSET } from '@/app/jobs/[job]/_parts/zero-first';
import { probability } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import { compared, lastOf, type Compared } from './compared';
import type { JobRecord, RecordedRound } from './gather';
import { namesOf, rehangNames } from './open-heights';

/** What this record does not tell, said before anything that it tells is believed. */
export function unknownBlocks(record: JobRecord): Block[] {
  const t = words('record');
  const { rounds, hidden, fit, outOfService } = record;
  const [before, after] = [lastOf(rounds, 'before'), lastOf(rounds, 'after')];
  const rows = compared(before, after);
  const both = before !== null && after !== null;
  const named = (of: (row: Compared) => boolean) =>
    listed(rows.filter(of).map(({ dimension }) => placeSaid(dimension)));
  const onlyBefore = both ? named((row) => row.after === null) : '';
  const onlyAfter = both ? named((row) => row.before === null) : '';
  const tape = tapeNames([before, after].filter((one) => one !== null));
  const told = [
    ...(fit === null ? [t('unknown.noFigures')] : []),
    ...(fit?.stale === true ? [t('unknown.stale')] : []),
    ...(hidden > 0 ? [t('unknown.hidden', { count: hidden })] : []),
    ...(before === null ? [t('unknown.noBefore')] : []),
    ...(after === null ? [t('unknown.noAfter')] : []),
    ...(onlyBefore === '' ? [] : [t('unknown.onlyBefore', { names: onlyBefore })]),
    ...(onlyAfter === '' ? [] : [t('unknown.onlyAfter', { names: onlyAfter })]),
    ...[before, after].flatMap((one) => (one === null ? [] : openIn(one, one === before && after !== null))),
    ...(tape.length === 0 ? [] : [t('unknown.tape', { names: listed(tape) })]),
    ...(outOfService.length === 0 ? [] : [t('unknown.outOfService', { tags: outOfService.join(', ') })]),
  ];
  return [
    { kind: 'heading', level: 2, text: t('unknown.title') },
    told.length === 0
      ? { kind: 'paragraph', text: t('unknown.nothing') }
      : { kind: 'list', items: told.map((text) => ({ text })) },
  ];
}

/**
 * What is open in a round that counts for the record. Of a round before a repair that was measured again after it
 * (`past`) it can no longer be settled.
 */
function openIn({ round, verdict, heights }: RecordedRound, past: boolean): string[] {
  const t = words('record');
  const name = roundSaid(round);
  if (heights.length === 0) return [];
  if (verdict === null) return [t('unknown.notJudged', { round: name })];
  if (!verdict.decidable)
    return [t(past ? 'unknown.past.undecidable' : 'unknown.undecidable', { round: name })];
  const told = (key: 'undecided' | 'rehang', names: readonly string[]) => {
    const values = { round: name, count: names.length, names: listed(names) };
    return names.length === 0 ? [] : [past ? t(`unknown.past.${key}`, values) : t(`unknown.${key}`, values)];
  };
  const p = probability(verdict.pZeroMisset);
  const body = namesOf(heights, ['likely-body']);
  return [
    ...(verdict.pZeroMisset < ZERO_LIKELY_MISSET
      ? []
      : [t(past ? 'unknown.past.datum' : 'unknown.datum', { round: name, p })]),
    ...told('undecided', namesOf(heights, ['undecided'])),
    ...told('rehang', rehangNames(heights)),
    // Before a repair the body is expected to be off: that is what is repaired.
    ...(round.stage === 'before' || body.length === 0
      ? []
      : [t('unknown.body', { round: name, names: listed(body) })]),
  ];
}

/** Dimensions whose reading for the record is by tape. */
function tapeNames(rounds: readonly RecordedRound[]): string[] {
  return [
    ...new Set(
      rounds.flatMap(({ round, dimensions }) => {
        const tapes = new Set(
          round.setups.filter(({ gaugeKind }) => gaugeKind === 'tape').map(({ label }) => label),
        );
        return dimensions.filter(({ setup }) => tapes.has(setup)).map(placeSaid);
      }),
    ),
  ];
}

import { dimensionKey } from '@/lib/measure/dimension';
import type { Dimension, Reading } from '@/lib/measure/types';
import type { BayRecord } from './record';
import type { BayHead } from './types';

/**
 * The record as lines of a measurement file, in the order of the readings: what the analysis reads and the store
 * keeps. Readings of a dimension that the sheet does not know (any more) are left out.
 */
export function readingsOf(head: BayHead, record: BayRecord): Reading[] {
  const dimensions = new Map(head.sheet.dimensions.map((one) => [dimensionKey(one), one]));
  return record.setups.flatMap((setup) =>
    [...setup.readings.values()].flatMap(({ dimension, repeat, value, at }) => {
      const known = dimensions.get(dimensionKey(dimension));
      return known === undefined ? [] : [readingOf(head, setup, known, { repeat, value, at })];
    }),
  );
}

/** One reading as a line of a measurement file; it has no line in any file. */
export function readingOf(
  head: Pick<BayHead, 'job' | 'stage' | 'attempt' | 'clearance'> & { sheet: Pick<BayHead['sheet'], 'name'> },
  setup: Pick<BayRecord['setups'][number], 'label' | 'gauge' | 'gaugeKind' | 'hand'>,
  dimension: Dimension,
  { repeat, value, at }: { repeat: number; value: number; at: number },
): Reading {
  return {
    ...dimension,
    line: 1,
    job: head.job,
    sheet: head.sheet.name,
    stage: head.stage,
    attempt: head.attempt,
    takenAt: at,
    technician: setup.hand,
    gauge: setup.gauge,
    gaugeKind: setup.gaugeKind,
    setup: setup.label,
    clearance: head.clearance,
    repeat,
    value,
    cause: null,
  };
}

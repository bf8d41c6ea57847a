import type { Learned } from '@/lib/assess/cause/learned';
import { gaugeOf, handOf } from '@/lib/assess/cause/model';
import { dimensionName, type Job, type Round, type Setup, type Side } from '@/lib/measure';
import { recordedDimensions } from '../recorded';
import type { RecordedDimension } from '../types';
import { missetsOf } from './missets';
import type { FinalDimension, FinalJob, SharedError } from './types';

/**
 * A job's first measuring after the repair as the risks need it; null where it has none.
 *
 * The error of a recorded deviation away from the zero stations: reading (sd r/√n) and one hanger's own part of the
 * setting (s √(1 − ρ)) by itself; shared with the other side of the same setup its common part (s √ρ); shared with all
 * heights of that side the settings of both zero gauges, carried by the lever (their part common to both sides shared
 * with the other side too); shared with all of a technician or gauge what is not known of its bias. Known biases are
 * taken off. A length has the reading and its own setting; a centre pin the same. A zero station's height shows no body:
 * it is left out.
 */
export function finalJob(job: Job, learned: Learned): FinalJob | null {
  const round = job.rounds.find(({ stage, attempt }) => stage === 'after' && attempt === 1);
  if (round === undefined || round.setups.length === 0) return null;
  const recorded = recordedDimensions(round);
  return {
    job: job.job,
    right: recorded.every(({ within }) => within),
    again: job.rounds.some(({ stage, attempt }) => stage === 'after' && attempt > 1),
    dimensions: recorded
      .filter(({ quantity, zero }) => !(quantity === 'height' && zero))
      .map((dimension) => finalDimension(dimension, round, learned)),
  };
}

function finalDimension(dimension: RecordedDimension, round: Round, learned: Learned): FinalDimension {
  const { quantity, technician, gauge, n, deviation, tolerance, within } = dimension;
  const hand = handOf(learned, technician);
  const state = gaugeOf(learned, gauge);
  const reading = hand.reading / Math.sqrt(n);
  const height = quantity === 'height';
  const setting = (quantity === 'length' ? learned.lengths.scatter : 1) * hand.setting;
  const common = height ? learned.common : 0;
  const zeros = height ? zerosOf(dimension, round) : [];
  return {
    name: dimensionName(dimension),
    quantity,
    technician,
    gauge,
    deviation,
    tolerance,
    within,
    known: height ? hand.bias + state.bias : 0,
    own: Math.hypot(reading, setting * Math.sqrt(1 - common)),
    shared: height
      ? [
          { key: `setup ${dimension.setup}`, mm: setting * Math.sqrt(common) },
          { key: `technician ${technician}`, mm: hand.biasSe },
          { key: `gauge ${gauge}`, mm: state.biasSe },
          ...zeros.flatMap(({ zero, weight }) => datumErrors(zero, weight, dimension.side, learned)),
        ]
      : [],
    datum: zeros.map(({ station, weight }) => ({ key: `body ${station} ${dimension.side ?? ''}`, weight })),
    missets: height ? missetsOf(learned, hand.missetRate) : [],
  };
}

interface ZeroOf {
  station: number;
  zero: Setup;
  /** − the lever: what a millimetre at the zero station does to this height. */
  weight: number;
}

/** The two zero gauges that a height was read against; none where its datum has not two ends. */
function zerosOf({ side, station, setup }: RecordedDimension, round: Round): ZeroOf[] {
  const hung = round.setups.find(({ label }) => label === setup);
  if (side === null || station === null || hung === undefined) return [];
  const [a, b] = [...zeroSetups(round, hung, side)];
  if (a === undefined || b === undefined) return [];
  const lever = (station - a[0]) / (b[0] - a[0]);
  return [
    { station: a[0], zero: a[1], weight: lever - 1 },
    { station: b[0], zero: b[1], weight: -lever },
  ];
}

/** The setting of a zero gauge, the part common to both sides apart. */
function datumErrors(zero: Setup, weight: number, side: Side | null, learned: Learned): SharedError[] {
  const { setting } = handOf(learned, zero.technician);
  return [
    { key: `zero ${zero.label}`, mm: weight * setting * Math.sqrt(learned.common) },
    { key: `zero ${zero.label} ${side ?? ''}`, mm: weight * setting * Math.sqrt(1 - learned.common) },
  ];
}

/** By station, the zero setup that `hung` was read against: the last before it, or else the first. */
function zeroSetups(round: Round, hung: Setup, side: Side): Map<number, Setup> {
  const zeros = new Map<number, Setup>();
  for (const setup of round.setups) {
    for (const seen of setup.observations) {
      if (seen.quantity !== 'height' || !seen.zero || seen.side !== side || seen.station === null) continue;
      if (setup.takenAt <= hung.takenAt || !zeros.has(seen.station)) zeros.set(seen.station, setup);
    }
  }
  return zeros;
}

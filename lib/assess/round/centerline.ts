import type { Observation, Round } from '@/lib/measure/types';
import { type JudgedRound, judgeRound } from '../cause/judge';
import type { Learned } from '../cause/learned';
import type { CenterlineVerdict } from '../types';

/**
 * Sway, or a gauge hung off centre: the question of the heights with one value a gauge. The centre pins are
 * sighted along the line through the pins of the two zero gauges, so their errors carry by the same lever.
 */
export function judgeCenterline(
  round: Round,
  learned: Learned,
  judged: JudgedRound | null = judgePins(round, learned),
): CenterlineVerdict[] {
  return (judged?.heights ?? []).map(
    ({ setup, gauge, technician, point, station, zero, deviation, p, misset, body }) => ({
      setup,
      gauge,
      technician,
      point,
      station,
      zero,
      deviation,
      p,
      misset,
      body,
    }),
  );
}

/** The centre pins of a round, judged as heights with a left side alone; null where they cannot be. */
export function judgePins(round: Round, learned: Learned): JudgedRound | null {
  const pins = centerlineAsHeights(round);
  const judged = pins === null ? null : judgeRound(pins, sideways(learned));
  return judged === null || 'why' in judged ? null : judged;
}

/** What is known of hands and gauges, but for their biases: those are of heights, and say nothing sideways. */
export function sideways(learned: Learned): Learned {
  const level = <T extends { bias: number }>(all: Record<string, T>): Record<string, T> =>
    Object.fromEntries(Object.entries(all).map(([name, one]) => [name, { ...one, bias: 0 }]));
  return { ...learned, technicians: level(learned.technicians), gauges: level(learned.gauges) };
}

/** The centre pins of a round as a round of heights with a left side alone; null where none was read. */
export function centerlineAsHeights(round: Round): Round | null {
  const setups = round.setups
    .map((setup) => ({ ...setup, observations: setup.observations.flatMap(asOneSide) }))
    .filter((setup) => setup.observations.length > 0);
  return setups.length === 0 ? null : { ...round, clearance: 0, setups };
}

/** A centre pin as a height with one side; the other side was not read. */
function asOneSide(seen: Observation): Observation[] {
  return seen.quantity === 'centerline' ? [{ ...seen, quantity: 'height', side: 'L' }] : [];
}

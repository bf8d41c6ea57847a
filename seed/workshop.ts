import type { GaugeKind } from '@/lib/measure';
import type { GaugeModel } from './gauge';
import { handAt, type Hand, type TechnicianModel } from './hand';
import type { Random } from './random';
import type { VehicleSheet } from './sheet';

/** Everything that jobs are made from: who works there with what, on which vehicles. */
export interface Workshop {
  technicians: readonly TechnicianModel[];
  gauges: readonly GaugeModel[];
  sheets: readonly VehicleSheet[];
  /** Share of damaged vehicles with damage left in after a repair that is measured at this time. */
  leftoverShare: (at: number) => number;
  /** `usual` reads few lengths, once each; `brief` fewer yet, repeats heights less too, and has short vehicles alone. */
  reading: 'thorough' | 'usual' | 'brief';
}

/** Somebody at work: a code, and the hand on that day. */
export interface AtWork {
  code: string;
  hand: Hand;
}

/** The person of this code with the hand of that day; null where there is none then. */
export function atWork(workshop: Workshop, code: string, at: number): AtWork | null {
  const technician = workshop.technicians.find((one) => one.code === code);
  const hand = technician && handAt(technician, at);
  return hand === undefined ? null : { code, hand };
}

/** One of those who are there on that day, other than `except` where there is another. */
export function someoneAtWork(workshop: Workshop, at: number, random: Random, except?: string): AtWork {
  const there = workshop.technicians.flatMap((technician) => {
    const hand = handAt(technician, at);
    return hand === undefined ? [] : [[{ code: technician.code, hand }, technician.load] as const];
  });
  const others = there.filter(([{ code }]) => code !== except);
  return random.weighted(others.length > 0 ? others : there);
}

/** The workshop's gauges of one kind. */
export function gaugesOf(workshop: Workshop, kind: GaugeKind): GaugeModel[] {
  return workshop.gauges.filter((gauge) => gauge.kind === kind);
}

import { benjaminiHochberg, betaBinomial, observedOverExpected } from '@/lib/stats';
import { rateOf } from '../right-first-time';
import { funnelOf } from './funnel';
import { gather, type Member } from './gather';
import { hardnessModel, type HardnessModel } from './hardness-model';
import type { RateJob } from './rate-job';
import type { AdjustedRate, FairRate, FairRates, RateGrouping } from './types';

/** Fewer jobs than this are marked, whatever the groups look like. */
const FEW_JOBS = 10;

/**
 * The right-first-time rate of every group of a kind, told so that it can be compared fairly: Wilson's interval, the
 * rate drawn towards that of all groups, its place in a funnel, and observed over expected given how hard the jobs were.
 * Groups come in the order of their names; nothing here ranks them.
 * @param model of the same jobs, where it is known already
 *
 * The expected count takes the chances of `hardnessModel` as known, and the group's own jobs are among those that it was
 * fitted to, which pulls the ratio of a group with much of the shop's work a little towards 1.
 * Sources: those of `binomialInterval`, `betaBinomial`, `widenedFunnelLimits` and `observedOverExpected`.
 */
export function fairRates(
  jobs: readonly RateJob[],
  by: RateGrouping,
  model: HardnessModel | null = by === 'section' ? null : hardnessModel(jobs),
): FairRates {
  const hardness = by === 'section' ? null : model;
  const groups = gather(jobs, by, hardness?.chances ?? null);
  const names = [...groups.keys()].sort();
  const members = names.map((name) => groups.get(name) ?? []);
  const rates = members.map((group) => rateOf(group));
  const counts = rates.map(({ right, jobs: n }) => ({ x: right, n }));
  const shrunk = betaBinomial(counts);
  const funnel = funnelOf(counts);
  const adjusted = adjust(members);
  return {
    by,
    overall: rateOf(members.flat()),
    groups: names.flatMap((name, i): FairRate[] => {
      const rate = rates[i];
      const place = funnel.units[i];
      const ratio = adjusted[i];
      if (!rate || !place || !ratio) return [];
      const smallWhy = whySmall(rate.jobs, shrunk.alpha, shrunk.beta);
      return [
        {
          name,
          ...rate,
          shrunk: shrunk.units[i] ?? { mean: null, low: null, high: null },
          small: smallWhy !== null,
          smallWhy,
          funnel: place,
          adjusted: ratio,
        },
      ];
    }),
    funnel: { target: funnel.target, tau: funnel.tau, method: funnel.method },
    hardness,
    notes: notesOf(by, shrunk.why, hardness?.why ?? null),
  };
}

function adjust(members: readonly (readonly Member[])[]): AdjustedRate[] {
  const compared = members.map((group): AdjustedRate => {
    const observed = group.filter(({ right }) => right).length;
    const chances = group.flatMap(({ chance }) => (chance === null ? [] : [chance]));
    if (chances.length < group.length) {
      const none = { expected: null, ratio: null, low: null, high: null, p: null };
      return { observed, ...none, why: 'How hard a job was is known of the whole job, not of one section.' };
    }
    return observedOverExpected(observed, chances);
  });
  const adjusted = benjaminiHochberg(compared.flatMap(({ p }) => (p === null ? [] : [p])));
  let next = 0;
  return compared.map((one) => (one.p === null ? one : { ...one, p: adjusted[next++] ?? null }));
}

function whySmall(jobs: number, alpha: number | null, beta: number | null): string | null {
  const lent = alpha === null || beta === null ? 0 : alpha + beta;
  if (jobs >= FEW_JOBS && jobs >= lent) return null;
  const count = jobs === 1 ? '1 job' : `${jobs} jobs`;
  return jobs < FEW_JOBS
    ? `Only ${count}: the rate by itself says little; the shrunk one leans on the other groups.`
    : `${count} say less here than what the other groups lend (worth ${Math.round(lent)} jobs).`;
}

function notesOf(by: RateGrouping, shrinkage: string | null, hardness: string | null): string[] {
  const notes: string[] = [];
  if (shrinkage !== null) notes.push(shrinkage);
  if (hardness !== null) notes.push(hardness);
  if (by === 'gauge') {
    notes.push('A job counts for every gauge that hung in it, so the groups share jobs: compare with care.');
  }
  if (by === 'technician') notes.push('A job counts for whoever began the first measuring after the repair.');
  if (by === 'zone') {
    notes.push('The zone is the section that carried most of the deviation before the repair, as recorded.');
  }
  return notes;
}

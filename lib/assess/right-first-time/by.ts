import { monthOf } from '@/lib/measure/month-of';
import { SECTIONS, type Section } from '@/lib/measure';
import type { Rate, TechnicianRate } from '../types';
import { chanceByHardness, expectedRight } from './expected';
import type { CountedOutcome, FirstTimeOutcome } from './outcome';
import { rateByName, rateOf, type ShrunkRate } from './rate';

const NO_OWN_JOB = 'This technician has begun no first measuring after a repair.';

/** By the technician who began the measuring after the repair; `all` names those without any too. */
export function rateByTechnician(
  outcomes: readonly CountedOutcome[],
  all: Iterable<string> = [],
): Map<string, TechnicianRate> {
  const groups = new Map([...all].map((technician): [string, CountedOutcome[]] => [technician, []]));
  gather(groups, outcomes, (outcome) => outcome.technician);
  const chance = chanceByHardness(outcomes);
  return new Map(
    [...rateByName(groups, NO_OWN_JOB)].map(([technician, rate]) => [
      technician,
      { ...rate, expected: expectedRight(groups.get(technician) ?? [], chance) },
    ]),
  );
}

/** By calendar month in the shop's time zone, `2025-06`. */
export function rateByMonth(
  outcomes: readonly FirstTimeOutcome[],
  timeZone = 'UTC',
): Map<string, ShrunkRate> {
  return rateByName(
    gather(new Map<string, FirstTimeOutcome[]>(), outcomes, ({ at }) => monthOf(at, timeZone)),
  );
}

/** By dimension sheet; jobs without a named sheet are left out. */
export function rateBySheet(outcomes: readonly FirstTimeOutcome[]): Map<string, ShrunkRate> {
  return rateByName(gather(new Map<string, FirstTimeOutcome[]>(), outcomes, ({ sheet }) => sheet));
}

/** By section of the vehicle: a job is right in a section when all that was measured there is within. */
export function rateBySection(outcomes: readonly FirstTimeOutcome[]): Map<Section, Rate> {
  const measured = outcomes.flatMap((outcome) => outcome.sections);
  return new Map(
    SECTIONS.map((section) => [section, rateOf(measured.filter((one) => one.section === section))]),
  );
}

function gather<Outcome>(
  groups: Map<string, Outcome[]>,
  outcomes: readonly Outcome[],
  nameOf: (outcome: Outcome) => string | null,
): Map<string, Outcome[]> {
  for (const outcome of outcomes) {
    const name = nameOf(outcome);
    if (name === null) continue;
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [outcome]);
    else group.push(outcome);
  }
  return groups;
}

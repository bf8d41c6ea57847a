import { analyseTrial, componentsOf, type PersonInTrial, type TrialAnalysis } from './analyse';
import { hangingsOf, namesOf, type Hanging } from './cells';
import type { Estimated, TrialReading } from './types';

/** With fewer people the trial less one's own part would be a colleague's. */
const LEAST_PEOPLE = 3;

/** What a trial shows of one of its people, for that person; nobody else is named. */
export interface OwnPart {
  hangings: Hanging[];
  /** Reading again; setting and hanging (REML of the own hangings alone); both in the mean of a hanging. */
  reading: Estimated;
  setting: Estimated;
  hanging: Estimated;
  /** Against the mean of all; withheld with the band. */
  bias: Estimated;
  /** All people of the trial together, or why that is not shown. */
  band: Pick<TrialAnalysis['components'], 'reading' | 'setting'> | null;
  bandWhy: string | null;
}

/**
 * One person's part of a trial beside all of it. Null where the person has no hanging in it.
 * @throws RangeError for readings that are not numbers.
 */
export function ownPart(
  readings: readonly TrialReading[],
  person: string,
  tolerance: number,
): OwnPart | null {
  const hangings = hangingsOf(readings);
  const own = hangings.filter((one) => one.person === person);
  if (own.length === 0) return null;
  const analysis = analyseTrial(readings, tolerance);
  const figures = analysis.people.find((one): one is PersonInTrial => one.person === person);
  const people = namesOf(hangings, 'person').length;
  const shown = people >= LEAST_PEOPLE;
  const bandWhy = shown
    ? null
    : `The trial as a whole is shown where ${LEAST_PEOPLE} or more took part: with fewer it would be a colleague’s.`;
  const none = (why: string): Estimated => ({ value: null, low: null, high: null, why });
  const unknown = none('There is nothing of yours to tell it from.');
  return {
    hangings: own,
    reading: figures?.reading ?? unknown,
    setting: settingOf(own),
    hanging: figures?.hanging ?? unknown,
    bias: bandWhy === null ? (figures?.bias ?? unknown) : none(bandWhy),
    band: shown ? { reading: analysis.components.reading, setting: analysis.components.setting } : null,
    bandWhy,
  };
}

function settingOf(own: readonly Hanging[]): Estimated {
  const none = (why: string): Estimated => ({ value: null, low: null, high: null, why });
  if (own.every(({ n }) => n < 2))
    return none('Every hanging was read once: reading and setting cannot be told apart.');
  return own.length === namesOf(own, 'point').length
    ? none('No point was hung twice, so setting shows no scatter of its own.')
    : componentsOf(own).setting;
}

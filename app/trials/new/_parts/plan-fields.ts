import { numberFrom } from '@/app/_words/typed-number';
import { TRIAL_LIMITS, type TrialPlan, type TrialPoint, type TrialPurpose } from '@/lib/access';

/** The form as it was sent, by the names of its fields. */
export type PlanFields = Record<string, string>;

export const POINT_ROWS = Array.from({ length: TRIAL_LIMITS.points }, (_, index) => index + 1);
export const personField = (code: string) => `who ${code}`;

export const START: PlanFields = {
  ...{ asked: 'bias', difference: '1', repeatability: '1.5', setting: '1.5', training: '50' },
  ...{ setups: '3', readings: '2' },
};

/** The fields that say the same as an earlier plan. */
export function fieldsOfPlan({ asked, points, people, setups, readings }: TrialPlan): PlanFields {
  const size = asked.question === 'bias' ? asked.difference : asked.ratio;
  return {
    ...START,
    asked: asked.question,
    [asked.question === 'bias' ? 'difference' : asked.question]: String(
      asked.question === 'training' ? 100 * size : size,
    ),
    ...Object.fromEntries(
      points.flatMap(({ name, value, tolerance }, index) => [
        [`point ${index + 1}`, name],
        [`value ${index + 1}`, String(value)],
        [`tolerance ${index + 1}`, String(tolerance)],
      ]),
    ),
    ...Object.fromEntries(people.map((code) => [personField(code), 'yes'])),
    ...{ setups: String(setups), readings: String(readings) },
  };
}

export interface ReadPlan {
  plan: Omit<TrialPlan, 'seed' | 'expected'> | null;
  /** What is missing or wrong, and the mend. */
  faults: string[];
}

/** The plan out of its form. */
export function planFrom(fields: PlanFields, codes: readonly string[], tolerance: number): ReadPlan {
  const faults: string[] = [];
  const asked = purposeFrom(fields, faults);
  const points = pointsFrom(fields, tolerance, faults);
  const people = codes.filter((code) => fields[personField(code)] !== undefined);
  const least = asked?.question === 'bias' ? 2 : 1;
  if (people.length < least)
    faults.push(least === 2 ? 'A bias shows between people: choose two at least.' : 'Choose who takes part.');
  if (people.length > TRIAL_LIMITS.people)
    faults.push(`Choose ${TRIAL_LIMITS.people} people at most: more are not one trial's work.`);
  const setups = wholeFrom(
    fields,
    'setups',
    'Hangings of each person at each point',
    TRIAL_LIMITS.setups,
    faults,
  );
  const readings = wholeFrom(fields, 'readings', 'Readings of a hanging', TRIAL_LIMITS.readings, faults);
  if (readings === 1 && (asked?.question === 'repeatability' || asked?.question === 'setting'))
    faults.push('To tell reading from setting, plan two readings of a hanging at least.');
  if (faults.length > 0 || asked === null || setups === null || readings === null)
    return { plan: null, faults };
  return { plan: { asked, points, people, setups, readings }, faults };
}

function purposeFrom(fields: PlanFields, faults: string[]): TrialPurpose | null {
  const size = (name: string) => numberFrom(fields[name] ?? '');
  const question = fields.asked;
  if (question === 'bias') {
    const difference = size('difference');
    if (difference !== null && difference > 0 && difference <= 1000) return { question, difference };
    faults.push('The bias to be found is a length above 0 mm: write 1 for one millimetre.');
  } else if (question === 'repeatability' || question === 'setting') {
    const ratio = size(question);
    if (ratio !== null && ratio > 1 && ratio <= 10) return { question, ratio };
    faults.push('How closely a scatter is to be known is a factor from above 1 to 10: 1.5 is usual.');
  } else if (question === 'training') {
    const left = size(question);
    if (left !== null && left > 0 && left < 100) return { question, ratio: left / 100 };
    faults.push('What a training leaves of the scatter is a share between 0 and 100 %: 50 is a half.');
  } else faults.push('Choose what the trial is to find out.');
  return null;
}

function pointsFrom(fields: PlanFields, usual: number, faults: string[]): TrialPoint[] {
  const points = POINT_ROWS.flatMap((row): TrialPoint[] => {
    const [name = '', value = '', tolerance = ''] = ['point', 'value', 'tolerance'].map((what) =>
      (fields[`${what} ${row}`] ?? '').trim(),
    );
    if (name === '' && value === '') return [];
    const sheet = numberFrom(value);
    const half = tolerance === '' ? usual : numberFrom(tolerance);
    if (name === '' || name.length > 80) faults.push(`Point ${row} needs a name, as on the sheet.`);
    if (sheet === null || Math.abs(sheet) > 100_000)
      faults.push(`Point ${row} needs its value on the sheet in mm, such as 307.5.`);
    if (half === null || !(half > 0 && half <= 1000))
      faults.push(`The tolerance of point ${row} is a length above 0 mm, such as 3.`);
    return name === '' || sheet === null || half === null ? [] : [{ name, value: sheet, tolerance: half }];
  });
  const names = points.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined)
    faults.push(`The point ${twice} is on the list twice: give each side its own name.`);
  if (names.length === 0 && faults.length === 0)
    faults.push('Name one point at least, with its value on the sheet.');
  return points;
}

function wholeFrom(
  fields: PlanFields,
  name: string,
  what: string,
  most: number,
  faults: string[],
): number | null {
  const number = numberFrom(fields[name] ?? '');
  if (number !== null && Number.isInteger(number) && number >= 1 && number <= most) return number;
  faults.push(`${what}: a whole number from 1 to ${most}.`);
  return null;
}

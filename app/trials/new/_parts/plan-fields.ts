import { bareMillimetres, brief, unit } from '@/app/_words/numbers';
import { numberFrom, typedMillimetres } from '@/app/_words/typed-number';
import { words } from '@/app/_words/words';
import { millimetresToInches } from '@/lib/measure/units';
import { TRIAL_LIMITS, type TrialPlan, type TrialPoint, type TrialPurpose } from '@/lib/access';

/** The form as it was sent, by the names of its fields. */
export type PlanFields = Record<string, string>;

export const POINT_ROWS = Array.from({ length: TRIAL_LIMITS.points }, (_, index) => index + 1);
export const personField = (code: string) => `who ${code}`;

/** The form before anything is filled in. */
export const startFields = (): PlanFields => ({
  asked: 'bias',
  difference: unit() === 'mm' ? '1' : brief(0.04),
  repeatability: brief(1.5),
  setting: brief(1.5),
  training: '50',
  setups: '3',
  readings: '2',
});

/** A length in mm as the form holds it: in the reader's unit, to a micrometre. */
const typedText = (mm: number): string =>
  unit() === 'mm' ? brief(mm, 3) : brief(millimetresToInches(mm), 5);

/** A length typed in the reader's unit, in mm; null where it is none. */
function lengthFrom(text: string): number | null {
  const typed = numberFrom(text);
  return typed === null ? null : typedMillimetres(typed);
}

/** The fields that say the same as an earlier plan. */
export function fieldsOfPlan({ asked, points, people, setups, readings }: TrialPlan): PlanFields {
  return {
    ...startFields(),
    asked: asked.question,
    ...(asked.question === 'bias'
      ? { difference: typedText(asked.difference) }
      : { [asked.question]: brief(asked.question === 'training' ? 100 * asked.ratio : asked.ratio, 4) }),
    ...Object.fromEntries(
      points.flatMap(({ name, value, tolerance }, index) => [
        [`point ${index + 1}`, name],
        [`value ${index + 1}`, typedText(value)],
        [`tolerance ${index + 1}`, typedText(tolerance)],
      ]),
    ),
    ...Object.fromEntries(people.map((code) => [personField(code), 'yes'])),
    setups: String(setups),
    readings: String(readings),
  };
}

export interface ReadPlan {
  plan: Omit<TrialPlan, 'seed' | 'expected'> | null;
  /** What is missing or wrong, and the mend. */
  faults: string[];
}

/** The plan out of its form. */
export function planFrom(fields: PlanFields, codes: readonly string[], tolerance: number): ReadPlan {
  const t = words('trials');
  const faults: string[] = [];
  const asked = purposeFrom(fields, faults);
  const points = pointsFrom(fields, tolerance, faults);
  const people = codes.filter((code) => fields[personField(code)] !== undefined);
  const least = asked?.question === 'bias' ? 2 : 1;
  if (people.length < least) faults.push(least === 2 ? t('faults.twoPeople') : t('faults.noPeople'));
  if (people.length > TRIAL_LIMITS.people) faults.push(t('faults.tooMany', { most: TRIAL_LIMITS.people }));
  const setups = wholeFrom(fields, 'setups', TRIAL_LIMITS.setups, faults);
  const readings = wholeFrom(fields, 'readings', TRIAL_LIMITS.readings, faults);
  if (readings === 1 && (asked?.question === 'repeatability' || asked?.question === 'setting'))
    faults.push(t('faults.twoReadings'));
  if (faults.length > 0 || asked === null || setups === null || readings === null)
    return { plan: null, faults };
  return { plan: { asked, points, people, setups, readings }, faults };
}

function purposeFrom(fields: PlanFields, faults: string[]): TrialPurpose | null {
  const t = words('trials');
  const size = (name: string) => numberFrom(fields[name] ?? '');
  const question = fields.asked;
  if (question === 'bias') {
    const difference = lengthFrom(fields.difference ?? '');
    if (difference !== null && difference > 0 && difference <= 1000) return { question, difference };
    faults.push(t('faults.difference', { unit: unit() }));
  } else if (question === 'repeatability' || question === 'setting') {
    const ratio = size(question);
    if (ratio !== null && ratio > 1 && ratio <= 10) return { question, ratio };
    faults.push(t('faults.ratio'));
  } else if (question === 'training') {
    const left = size(question);
    if (left !== null && left > 0 && left < 100) return { question, ratio: left / 100 };
    faults.push(t('faults.training'));
  } else faults.push(t('faults.noQuestion'));
  return null;
}

function pointsFrom(fields: PlanFields, usual: number, faults: string[]): TrialPoint[] {
  const t = words('trials');
  const points = POINT_ROWS.flatMap((row): TrialPoint[] => {
    const [name = '', value = '', tolerance = ''] = ['point', 'value', 'tolerance'].map((what) =>
      (fields[`${what} ${row}`] ?? '').trim(),
    );
    if (name === '' && value === '') return [];
    const sheet = lengthFrom(value);
    const half = tolerance === '' ? usual : lengthFrom(tolerance);
    if (name === '' || name.length > 80) faults.push(t('faults.pointName', { row }));
    if (sheet === null || Math.abs(sheet) > 100_000)
      faults.push(t('faults.pointValue', { row, unit: unit(), example: bareMillimetres(307.5) }));
    if (half === null || !(half > 0 && half <= 1000))
      faults.push(
        t('faults.pointTolerance', { row, unit: unit(), example: unit() === 'mm' ? '3' : brief(0.12) }),
      );
    return name === '' || sheet === null || half === null ? [] : [{ name, value: sheet, tolerance: half }];
  });
  const names = points.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined) faults.push(t('faults.twice', { point: twice }));
  if (names.length === 0 && faults.length === 0) faults.push(t('faults.noPoint'));
  return points;
}

function wholeFrom(
  fields: PlanFields,
  name: 'setups' | 'readings',
  most: number,
  faults: string[],
): number | null {
  const number = numberFrom(fields[name] ?? '');
  if (number !== null && Number.isInteger(number) && number >= 1 && number <= most) return number;
  faults.push(words('trials')(`faults.${name}`, { most }));
  return null;
}

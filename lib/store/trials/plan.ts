import { z } from 'zod';
import type { TrialPlan } from '@/lib/store/types';

/** What a trial may hold: more is not one morning's work any more. */
export const TRIAL_LIMITS = { points: 8, people: 12, setups: 15, readings: 10 } as const;

const MOST_MM = 100_000;
const length = z.number().min(-MOST_MM).max(MOST_MM);
const name = z.string().trim().min(1).max(80);
const ratio = z.number().positive().max(100);
const whole = (most: number) => z.number().int().min(1).max(most);
const differ = (names: readonly string[]) => new Set(names).size === names.length;

const asked = z.discriminatedUnion('question', [
  z.object({ question: z.literal('bias'), difference: z.number().positive().max(1000) }),
  z.object({ question: z.enum(['repeatability', 'setting', 'training']), ratio }),
]);

const point = z.object({ name, value: length, tolerance: z.number().positive().max(1000) });

const plan = z.object({
  asked,
  points: z
    .array(point)
    .min(1)
    .max(TRIAL_LIMITS.points)
    .refine((points) => differ(points.map((one) => one.name)), 'A point is in the plan twice.'),
  people: z.array(name).min(1).max(TRIAL_LIMITS.people).refine(differ, 'A person is in the plan twice.'),
  setups: whole(TRIAL_LIMITS.setups),
  readings: whole(TRIAL_LIMITS.readings),
  seed: z.number().int().min(0).max(0x7fff_ffff),
  expected: z.object({ reading: z.number().positive(), setting: z.number().positive() }),
});

/**
 * A plan as it may be kept.
 * @throws RangeError that names what is wrong.
 */
export function checkedPlan(given: unknown): TrialPlan {
  const parsed = plan.safeParse(given);
  if (parsed.success) return parsed.data;
  const [first] = parsed.error.issues;
  throw new RangeError(`The plan cannot be kept: ${first?.path.join(', ') ?? ''}: ${first?.message ?? ''}`);
}

/** Lines of the run sheet. */
export const plannedRuns = ({ points, people, setups }: TrialPlan): number =>
  points.length * people.length * setups;

export const plannedReadings = (of: TrialPlan): number => plannedRuns(of) * of.readings;

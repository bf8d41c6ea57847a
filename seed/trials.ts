import { runSheet } from '@/lib/assess/trials';
import type { TrialPlan } from '@/lib/store';
import { randomAt } from './random';

/** A repeat trial with all its readings, as they were entered. */
export interface DemoTrial {
  name: string;
  plan: TrialPlan;
  readings: { run: number; repeat: number; value: number; by: string }[];
}

/** Points of an ordinary sheet, chosen for being easy to reach on a vehicle that waits anyway. */
const POINTS = [
  { name: 'C left', value: 246, tolerance: 3 },
  { name: 'F left', value: 388, tolerance: 3 },
  { name: 'H right', value: 412, tolerance: 3 },
  { name: 'N right', value: 305, tolerance: 3 },
];

/** Sd of reading again and of setting again, and bias, mm: the hands of people.ts; QUI's setting falls by the training. */
const HANDS = {
  before: { ASH: [0.45, 0.7, 0.15], FEL: [0.36, 0.45, 0.05], QUI: [0.55, 1.3, 0.1] },
  after: { ASH: [0.45, 0.7, 0.15], FEL: [0.36, 0.45, 0.05], QUI: [0.55, 0.65, 0.1] },
} as const;

type Hand = keyof (typeof HANDS)['before'];
const PEOPLE: readonly Hand[] = ['ASH', 'FEL', 'QUI'];

/** The two trials by which the trainer of the demo shop looked whether the training of QUI changed the setting. */
export function demoTrials(seed: number): DemoTrial[] {
  return [
    trial('Before the training of May', 'before', seed),
    trial('After the training of May', 'after', seed),
  ];
}

function trial(name: string, when: keyof typeof HANDS, seed: number): DemoTrial {
  const random = randomAt(seed, when === 'before' ? 1 : 2, 77);
  const plan: TrialPlan = {
    asked: { question: 'training', ratio: 0.5 },
    points: POINTS,
    people: [...PEOPLE],
    setups: 6,
    readings: 2,
    seed: random.whole(1, 1_000_000),
    expected: { reading: 0.5, setting: 0.8 },
  };
  // What each point of this one vehicle truly is beside its sheet, the same for everybody.
  const bodies = new Map(POINTS.map((point) => [point.name, random.normal(0.8)]));
  const lines = runSheet({ ...plan, points: POINTS.map((point) => point.name) });
  const readings = lines.flatMap(({ order, person, point }) => {
    const by = PEOPLE.find((code) => code === person);
    const sheet = POINTS.find((one) => one.name === point);
    if (by === undefined || sheet === undefined) return [];
    const [reading, setting, bias] = HANDS[when][by];
    const hung = sheet.value + (bodies.get(point) ?? 0) + bias + random.normal(setting);
    return Array.from({ length: plan.readings }, (_, i) => ({
      run: order,
      repeat: i + 1,
      value: Math.round((hung + random.normal(reading)) * 10) / 10,
      by,
    }));
  });
  return { name, plan, readings };
}

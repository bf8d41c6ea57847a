import { heightsOfRounds } from '@/app/technicians/_parts/heights-of-rounds';
import { ownRounds, type OwnRound } from '@/app/technicians/_parts/own-rounds';
import { missCostOf } from '@/app/_shop/miss-cost';
import {
  currentFigures,
  getPerson,
  habitsAnswer,
  handAnswer,
  namedSetups,
  roundVerdicts,
  signalsOf,
  type Person,
  type SetupRow,
  type ShopFigures,
  type Viewer,
} from '@/lib/access';
import type { TechnicianFigures } from '@/lib/assess';
import type { HandAnswer } from '@/lib/assess/answers';
import type { HabitCell } from '@/lib/assess/habits';
import type { Signal } from '@/lib/assess/signals';

const ROUNDS = 10;
/** Setups that show a habit: enough to talk over, and no more than stand on half a page. */
const SETUPS = 6;

/** What a trainer and a technician talk over: one hand, beside the shop without names. */
export interface TalkSheet {
  shop: { name: string; timeZone: string };
  person: Person;
  fit: { fittedAt: number; stale: boolean } | null;
  own: TechnicianFigures | null;
  band: ShopFigures['shop'] | null;
  hand: HandAnswer | null;
  /** What changed beyond chance. */
  changes: readonly Signal[];
  habits: HabitCell[];
  /** The newest setups that show each habit found. */
  shownBy: ReadonlyMap<HabitCell['habit'], SetupRow[]>;
  rounds: readonly OwnRound[];
  printed: { at: number; by: string };
}

/** Null where there is nobody of this code whose figures the viewer may see. */
export async function talkSheetOf(viewer: Viewer, code: string, now: number): Promise<TalkSheet | null> {
  const { shop } = viewer;
  const [person, fit, hand, changes, cells, verdicts] = await Promise.all([
    getPerson(viewer, code),
    currentFigures(viewer),
    handAnswer(viewer, code),
    signalsOf(viewer, 'technician', code),
    habitsAnswer(viewer),
    roundVerdicts(viewer, { technician: code, limit: ROUNDS }),
  ]);
  if (person === null) return null;
  const heights = await heightsOfRounds(viewer, code, verdicts);
  const habits = (cells ?? []).filter(({ technician }) => technician === code);
  const found = habits.filter(({ state }) => state === 'found');
  const setups = await Promise.all(
    found.map(async ({ habit, shownBy }) => {
      const named = await namedSetups(viewer, code, shownBy.slice(0, SETUPS));
      return [habit, named] as const;
    }),
  );
  return {
    shop,
    person,
    fit,
    hand,
    changes,
    habits,
    own: fit?.figures.technicians.find(({ technician }) => technician === code) ?? null,
    band: fit?.figures.shop ?? null,
    shownBy: new Map(setups),
    rounds: ownRounds(verdicts, code, heights, missCostOf(shop)),
    printed: { at: now, by: viewer.code },
  };
}

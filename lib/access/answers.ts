import type { HabitsAnswer, HandAnswer, RatesAnswer, RiskAnswer, WhatIfAnswer } from '@/lib/assess/answers';
import type { RateJob } from '@/lib/assess/rates';
import type { Attention } from '@/lib/assess/signals';
import type { Viewer } from '@/lib/identity';
import { currentAnswer } from '@/lib/refresh';
import { demand, may } from './may';
import { ownHabits } from './own-habits';

/** Right first time, told fairly, by every grouping. @throws Refused */
export async function ratesAnswer(viewer: Viewer): Promise<RatesAnswer | null> {
  demand(viewer, 'see everybody’s figures');
  return currentAnswer(viewer.shop.id, 'rates');
}

/** The jobs behind the rates, for the rates of a part of them. @throws Refused */
export async function rateJobs(viewer: Viewer): Promise<RateJob[]> {
  demand(viewer, 'see everybody’s figures');
  return (await currentAnswer(viewer.shop.id, 'rate-jobs')) ?? [];
}

/** What measuring error does to the rate. @throws Refused */
export async function riskAnswer(viewer: Viewer): Promise<RiskAnswer | null> {
  demand(viewer, 'see everybody’s figures');
  return currentAnswer(viewer.shop.id, 'risk');
}

/** What stands out of chance. @throws Refused */
export async function signalsAnswer(viewer: Viewer): Promise<Attention | null> {
  demand(viewer, 'see everybody’s figures');
  return currentAnswer(viewer.shop.id, 'signals');
}

/** The shop as it would work under other rules. @throws Refused */
export async function whatIfAnswer(viewer: Viewer): Promise<WhatIfAnswer | null> {
  demand(viewer, 'see everybody’s figures');
  return currentAnswer(viewer.shop.id, 'what-if');
}

/** What one technician comes for; null for a colleague's, and before the first answer. */
export async function handAnswer(viewer: Viewer, code: string): Promise<HandAnswer | null> {
  if (code !== viewer.code && !may(viewer, 'see everybody’s figures')) return null;
  const hands = await currentAnswer(viewer.shop.id, 'hands');
  return hands?.find(({ technician }) => technician === code) ?? null;
}

/** Habits by technician; a technician's own alone. */
export async function habitsAnswer(viewer: Viewer): Promise<HabitsAnswer | null> {
  const cells = await currentAnswer(viewer.shop.id, 'habits');
  if (cells === null || may(viewer, 'see everybody’s figures')) return cells;
  return ownHabits(cells, viewer.code);
}

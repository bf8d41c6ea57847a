import {
  habitSpan,
  handSpan,
  type HabitsAnswer,
  type HandAnswer,
  type HandFilter,
  type HandSpan,
  type RatesAnswer,
  type RiskAnswer,
  type SignalsAnswer,
  type SpanChoices,
  type WhatIfAnswer,
} from '@/lib/assess/answers';
import type { RateJob } from '@/lib/assess/rates';
import type { Signal, SignalChart, Subject } from '@/lib/assess/signals';
import type { Viewer } from '@/lib/identity';
import { frozen, onceFor } from '@/lib/memory';
import { currentAnswer, currentCharts, currentHand, currentMonths, currentRateJobs } from '@/lib/refresh';
import { demand, may } from './may';
import { ownHabits } from './own-habits';
import { seesHand } from './sees-hand';

/** Right first time, told fairly, by every grouping. @throws Refused */
export async function ratesAnswer(viewer: Viewer): Promise<RatesAnswer | null> {
  demand(viewer, 'see everybody’s figures');
  return currentAnswer(viewer.shop.id, 'rates');
}

const NONE: readonly RateJob[] = [];

/** The jobs behind the rates, for the rates of a part of them. @throws Refused */
export async function rateJobs(viewer: Viewer): Promise<readonly RateJob[]> {
  demand(viewer, 'see everybody’s figures');
  return (await currentRateJobs(viewer.shop.id)) ?? NONE;
}

/** What measuring error does to the rate. @throws Refused */
export async function riskAnswer(viewer: Viewer): Promise<RiskAnswer | null> {
  demand(viewer, 'see everybody’s figures');
  return currentAnswer(viewer.shop.id, 'risk');
}

/** What stands out of chance. @throws Refused */
export async function signalsAnswer(viewer: Viewer): Promise<SignalsAnswer | null> {
  demand(viewer, 'see everybody’s figures');
  return currentAnswer(viewer.shop.id, 'signals');
}

const QUIET: readonly Signal[] = Object.freeze([]);

/** What stands out of chance of one hand or gauge, in the order of the list; nothing of a colleague's hand. */
export async function signalsOf(
  viewer: Viewer,
  kind: 'technician' | 'gauge',
  name: string,
): Promise<readonly Signal[]> {
  if (kind === 'technician' && !seesHand(viewer, name)) return QUIET;
  const answer = await currentAnswer(viewer.shop.id, 'signals');
  return answer === null ? QUIET : ownSignals(answer, kind, name);
}

/** The same object while nothing is written, so that what is drawn from it is found again. */
const ownSignals = onceFor((answer: SignalsAnswer, kind: Subject['kind'], name: string): readonly Signal[] =>
  frozen(answer.signals.filter(({ subject }) => subject.kind === kind && subject.name === name)),
);

/** Every series with its chart; null before the first answer. @throws Refused */
export async function signalCharts(viewer: Viewer): Promise<readonly SignalChart[] | null> {
  demand(viewer, 'see everybody’s figures');
  return currentCharts(viewer.shop.id);
}

/** The shop as it would work under other rules. @throws Refused */
export async function whatIfAnswer(viewer: Viewer): Promise<WhatIfAnswer | null> {
  demand(viewer, 'see everybody’s figures');
  return currentAnswer(viewer.shop.id, 'what-if');
}

/** What one technician comes for; null for a colleague's, and before the first answer. */
export async function handAnswer(viewer: Viewer, code: string): Promise<HandAnswer | null> {
  if (!seesHand(viewer, code)) return null;
  return currentHand(viewer.shop.id, code);
}

/** Habits by technician; a technician's own alone. */
export async function habitsAnswer(viewer: Viewer): Promise<HabitsAnswer | null> {
  const cells = await currentAnswer(viewer.shop.id, 'habits');
  if (cells === null || may(viewer, 'see everybody’s figures')) return cells;
  return ownHabits(cells, viewer.code);
}

/** Months, `2025-03`, the first and the last one included; absent where there is no end. */
export interface Months {
  from?: string | undefined;
  to?: string | undefined;
}

/** The months and sheets that figures can be held to, in their order. */
export async function spanChoices(viewer: Viewer): Promise<SpanChoices> {
  return (await currentAnswer(viewer.shop.id, 'choices')) ?? { months: [], sheets: [] };
}

/** Habits from the jobs begun in some months, by one sheet or by all; a technician's own alone. */
export async function habitsWithin(
  viewer: Viewer,
  { sheet, ...asked }: Months & { sheet?: string | undefined },
): Promise<HabitsAnswer> {
  const months = await currentMonths(viewer.shop.id, 'habits', await monthsOf(viewer, asked), sheet);
  const cells = habitSpan(months.map(({ sums }) => sums));
  return may(viewer, 'see everybody’s figures') ? cells : ownHabits(cells, viewer.code);
}

/** A hand within some months, by one sheet, with one gauge, in one section; null for a colleague's. */
export async function handWithin(
  viewer: Viewer,
  code: string,
  { sheet, gauge, section, ...asked }: Months & HandFilter & { sheet?: string | undefined },
): Promise<HandSpan | null> {
  if (!seesHand(viewer, code)) return null;
  const months = await currentMonths(viewer.shop.id, 'hands', await monthsOf(viewer, asked), sheet);
  return handSpan(
    code,
    months.map(({ month, sums }) => ({ month, hands: sums })),
    { gauge, section },
  );
}

async function monthsOf(viewer: Viewer, { from, to }: Months): Promise<string[]> {
  const { months } = await spanChoices(viewer);
  return months.filter((month) => (from === undefined || month >= from) && (to === undefined || month <= to));
}

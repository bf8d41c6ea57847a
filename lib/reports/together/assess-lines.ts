import { assessment } from '@/lib/assess/assess-shop';
import { passTogether } from '@/lib/assess/crew';
import { PART } from '@/lib/assess/judge-jobs';
import { ShownSums } from '@/lib/assess/habits';
import { learning, type LearnOptions, surveyOf } from '@/lib/assess/learn';
import { MeasuredSums } from '@/lib/assess/measured';
import type { ShopAssessment } from '@/lib/assess/shop-assessment';
import { type SharedLines, SharedReadings } from '@/lib/measure';
import { inParts } from '@/lib/measure/in-parts';
import type { Packed, VerdictText } from '../verdict-texts';
import type { Crew } from './crew';
import { TallySums } from './tally-sums';
import type { RoundAt } from './works';

export interface Telling extends LearnOptions {
  onJudged?: ((jobs: number) => void) | undefined;
}

/** A shop worked out by a crew: the verdicts stand in `texts` alone, as the report prints them. */
export interface AssessedLines {
  shop: ShopAssessment;
  texts: VerdictText<Packed>[];
}

/** Jobs that are surveyed at once. */
const SURVEYED = 100;

/** `assessShop` of the jobs of accepted files, by a crew, the same to the last digit. */
export async function assessLines(
  crew: Crew,
  lines: SharedLines,
  { onJudged, ...options }: Telling = {},
): Promise<AssessedLines> {
  await crew.take(lines);
  const jobs = new SharedReadings(lines).jobsInOrder;
  const surveyed = await Promise.all(inParts(jobs, SURVEYED).map((part) => crew.survey(part)));
  const measured = new MeasuredSums();
  for (const one of surveyed.flatMap((part) => part.measured)) measured.add(one);
  const rounds = surveyed.flatMap((part) => part.rounds).flatMap((count, i) => roundsOf(jobs[i] ?? 0, count));
  const survey = surveyOf(surveyed.map((part) => part.survey));
  const learned = await passTogether(learning(rounds, survey, options), (part) => crew.tally(part));
  await crew.know(learned);
  const texts: VerdictText<Packed>[] = [];
  const habits = new TallySums();
  let judged = 0;
  await Promise.all(
    inParts(jobs, PART).map(async (own, part) => {
      const { text, tallies } = await crew.judge(own);
      texts[part] = text;
      habits.add(part, tallies);
      onJudged?.((judged += own.length));
    }),
  );
  const shown = new ShownSums();
  for (const one of await crew.shown()) shown.add(one);
  const tallies = shown.into(habits.all());
  return { shop: assessment(measured, learned, { rounds: [], tallies }), texts };
}

const roundsOf = (job: number, count: number): RoundAt[] =>
  Array.from({ length: count }, (_, round) => ({ job, round }));

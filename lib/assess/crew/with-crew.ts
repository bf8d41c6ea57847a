import { alone, type Crew } from './crew';
import { threads } from './threads';

/** Fewer rounds are worked out sooner than threads start. */
const WORTH_THREADS = 120;

/** Has work on so many rounds done by whoever does it soonest, and lets them go after it. */
export const withCrew = <Result>(rounds: number, work: (crew: Crew) => Promise<Result>): Promise<Result> =>
  withSoonest(rounds, { alone: () => alone, threads }, work);

/** The same for crews of any kind. */
export async function withSoonest<Own extends { close: () => Promise<void> }, Result>(
  rounds: number,
  crews: { alone: () => Own; threads: () => Own },
  work: (crew: Own) => Promise<Result>,
): Promise<Result> {
  const crew = rounds < WORTH_THREADS ? crews.alone() : crews.threads();
  try {
    return await work(crew);
  } finally {
    await crew.close();
  }
}

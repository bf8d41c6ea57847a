import { alone, type Crew } from './crew';
import { threads } from './threads';

/** Fewer rounds are worked out sooner than threads start. */
export const WORTH_THREADS = 120;

/** Has work on so many rounds done by whoever does it soonest, and lets them go after it. */
export async function withCrew<Result>(
  rounds: number,
  work: (crew: Crew) => Promise<Result>,
): Promise<Result> {
  const crew = rounds < WORTH_THREADS ? alone : threads();
  try {
    return await work(crew);
  } finally {
    await crew.close();
  }
}

import { numberOf, Pool, withSoonest } from '@/lib/assess/crew';
import type { ShownApart } from '@/lib/assess/habits';
import type { Asking } from './thread';
import { Works } from './works';

/** Whoever does such work: `take` and `know` are told to all of them, `shown` is asked of all. */
export type Crew = {
  [Method in Exclude<keyof Works, 'shown'>]: (
    of: Parameters<Works[Method]>[0],
  ) => Promise<ReturnType<Works[Method]>>;
} & { shown: () => Promise<ShownApart[]>; close: () => Promise<void> };

/** On this thread, one after the other. */
export function alone(): Crew {
  const works = new Works();
  return {
    take: (lines) => Promise.resolve(works.take(lines)),
    survey: (jobs) => Promise.resolve(works.survey(jobs)),
    tally: (pass) => Promise.resolve(works.tally(pass)),
    know: (learned) => Promise.resolve(works.know(learned)),
    judge: (jobs) => Promise.resolve(works.judge(jobs)),
    shown: () => Promise.resolve([works.shown()]),
    close: () => Promise.resolve(),
  };
}

/** On one thread a core. */
export function threads(count?: number): Crew {
  const pool = new Pool(new URL('./thread.mjs', import.meta.url), count);
  const ask = (asking: Asking, apart = false): Promise<unknown> => pool.ask(asking, apart);
  const tellAll = (asking: Asking): Promise<void> => pool.askAll(asking).then(() => undefined);
  return {
    // A thread answers with what its method gives.
    take: (of) => tellAll({ method: 'take', of }),
    survey: (of) => ask({ method: 'survey', of }) as ReturnType<Crew['survey']>,
    tally: (of) =>
      ask({ method: 'tally', of, number: numberOf(of.learned) }, true) as ReturnType<Crew['tally']>,
    know: (of) => tellAll({ method: 'know', of }),
    judge: (of) => ask({ method: 'judge', of }) as ReturnType<Crew['judge']>,
    shown: () => pool.askAll({ method: 'shown', of: undefined }) as Promise<ShownApart[]>,
    close: () => pool.close(),
  };
}

/** Has work on so many rounds done by whoever does it soonest, and lets them go after it. */
export const withCrew = <Result>(rounds: number, work: (crew: Crew) => Promise<Result>): Promise<Result> =>
  withSoonest(rounds, { alone, threads }, work);

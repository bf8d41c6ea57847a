import type { Crew } from './crew';
import { Pool } from './pool';
import { numberOf } from './same-learned';
import type { Asking, Task } from './thread';

/**
 * A crew of threads, one for each core. Starting one takes about a second, which a few hundred rounds are worth.
 * What a thread throws comes back as the error of what was asked of the crew; it takes no more work after that.
 */
export function threads(count?: number): Crew {
  const pool = new Pool(new URL('./thread.mjs', import.meta.url), count);
  const ask = (task: Task): Promise<unknown> => {
    const asking: Asking = { ...task, number: numberOf(task.of.learned) };
    return pool.ask(asking);
  };
  return {
    // A thread answers with what its method gives.
    tally: (of) => ask({ method: 'tally', of }) as ReturnType<Crew['tally']>,
    assess: (of) => ask({ method: 'assess', of }) as ReturnType<Crew['assess']>,
    foretell: (of) => ask({ method: 'foretell', of }) as ReturnType<Crew['foretell']>,
    close: () => pool.close(),
  };
}

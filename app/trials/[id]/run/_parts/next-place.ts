import type { RunLine, TrialView } from '@/lib/access';

export interface NextPlace {
  line: RunLine;
  repeat: number;
}

/** The first place of the run sheet that is not filled: of the own runs first, for somebody who takes part. */
export function nextPlace({ runs, filled }: TrialView, viewer: string): NextPlace | null {
  const own = runs.filter(({ person }) => person === viewer);
  return firstOpen(own, filled) ?? firstOpen(runs, filled);
}

function firstOpen(runs: readonly RunLine[], filled: TrialView['filled']): NextPlace | null {
  const taken = new Set(filled.map(({ run, repeat }) => `${run} ${repeat}`));
  for (const line of runs)
    for (let repeat = 1; repeat <= line.readings; repeat++)
      if (!taken.has(`${line.order} ${repeat}`)) return { line, repeat };
  return null;
}

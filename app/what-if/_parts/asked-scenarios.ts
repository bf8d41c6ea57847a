import { firstOf, type Query } from '@/app/_words/address';
import { words } from '@/app/_words/words';
import type { WhatIfAnswer } from '@/lib/assess/answers';
import type { WhatIfRow } from '@/lib/assess/what-if';
import { frozen, onceFor } from '@/lib/memory';

export interface AskedScenarios {
  /** As now first, the gauge that was asked for last. */
  rows: readonly WhatIfRow[];
  /** The gauge that is taken out of service; null where none can be. */
  without: string | null;
  /** Said where the gauge asked for has no scenario. */
  note: string | null;
}

const rowsWith = onceFor(({ answer }: WhatIfAnswer, taken: WhatIfRow | undefined): readonly WhatIfRow[] =>
  frozen([...(answer?.rows ?? []), ...(taken === undefined ? [] : [taken])]),
);

/** The scenarios with one gauge out of service: the one asked for, else the one farthest from the others. */
export function askedScenarios(stored: WhatIfAnswer, query: Query): AskedScenarios {
  const { without, farthest } = stored;
  const wanted = firstOf(query, 'without');
  const known = without.find(({ gauge }) => gauge === wanted);
  const taken = known ?? without.find(({ gauge }) => gauge === farthest);
  return {
    rows: rowsWith(stored, taken?.row),
    without: taken?.gauge ?? null,
    note:
      wanted === undefined || known !== undefined
        ? null
        : words('whatIf')('noScenario', { gauge: wanted.slice(0, 40) }),
  };
}

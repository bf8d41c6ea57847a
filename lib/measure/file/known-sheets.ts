import { dimensionName } from '../dimension';
import { grouped } from '../grouped';
import type { Draft } from './draft';
import type { KnownDimension, ReadOptions } from './options';

/** What is known of a line's dimension from sheets that were stored earlier. */
export class KnownSheets {
  private readonly byName = new Map<string, Map<string, KnownDimension[]>>();

  constructor(private readonly lookup: ReadOptions['knownSheets']) {}

  /** The dimensions that the line may mean; two where a length may be the straight one or the diagonal. */
  of(draft: Draft): readonly KnownDimension[] {
    return draft.sheet === null ? [] : (this.sheet(draft.sheet).get(dimensionName(draft)) ?? []);
  }

  private sheet(name: string): Map<string, KnownDimension[]> {
    let known = this.byName.get(name);
    if (known === undefined) {
      known = grouped(this.lookup?.(name)?.values() ?? [], dimensionName);
      this.byName.set(name, known);
    }
    return known;
  }
}

import type { Reading } from '@/lib/measure';
import type { Queries } from '@/lib/store/connection/database';
import type { Rows } from '@/lib/store/sql/rows';
import type { SaveSummary, ShopId } from '@/lib/store/types';
import { layOut } from './lay-out';
import type { NewRows } from './new-rows';
import { readKnown } from './read-known';
import { summaryOf } from './save-readings';
import { NewJobsWriter } from './write-new-jobs';
import { writeParents } from './write-parents';

/** Something of the file contradicts what is stored; which line, `saveReadings` is to say. */
export class Contradicted extends Error {}

/** People, gauges and sheets of a file, and after them jobs, which nothing stored can contradict any more. */
export class NewJobsBeingSaved {
  readonly people = new Set<string>();
  readonly gauges = new Set<string>();
  newSheets = 0;
  jobs = 0;
  readonly #known = {
    people: new Map<string, number>(),
    gauges: new Map<string, number>(),
    sheets: new Map<string, { id: number; dimensions: Map<string, number> }>(),
  };
  readonly #writer: NewJobsWriter;

  constructor(
    private readonly queries: Queries,
    rows: Rows,
    private readonly shop: ShopId,
    fileId: number,
  ) {
    this.#writer = new NewJobsWriter(rows, shop, this.#known, fileId);
  }

  get counts(): Pick<SaveSummary, 'added' | 'causes' | 'newSetups'> {
    const { readings, causes, setups } = this.#writer;
    return { added: readings, causes, newSetups: setups };
  }

  /**
   * Stores whom and what some readings are the first to name, as `OneForEach` gives them.
   * @throws Contradicted
   */
  async name(samples: readonly Reading[]): Promise<void> {
    if (samples.length === 0) return;
    const known = await readKnown(this.queries, this.shop, samples);
    const { batch, conflicts } = layOut(samples, known);
    if (conflicts.length > 0) throw new Contradicted();
    const { newPeople, newGauges, newSheets } = summaryOf(batch, known);
    for (const code of newPeople) this.people.add(code);
    for (const tag of newGauges) this.gauges.add(tag);
    this.newSheets += newSheets;
    // A sheet without a name is written with its job.
    const named = batch.sheets.filter(({ name }) => name !== null);
    const ids = await writeParents(this.queries, this.shop, { ...batch, sheets: named }, known);
    for (const [code, id] of ids.people) this.#known.people.set(code, id);
    for (const [tag, id] of ids.gauges) this.#known.gauges.set(tag, id);
    for (const [{ name }, id] of ids.sheets) {
      if (name === null) continue;
      const sheet = this.#known.sheets.get(name) ?? { id, dimensions: new Map<string, number>() };
      this.#known.sheets.set(name, sheet);
    }
    for (const [{ name }, dimensions] of ids.dimensions) {
      const sheet = this.#known.sheets.get(name ?? '');
      for (const [key, id] of dimensions) sheet?.dimensions.set(key, id);
    }
  }

  /** Jobs that name no more than was told before. */
  async write(piece: NewRows): Promise<void> {
    await this.#writer.write(piece);
    this.jobs += piece.jobs.length;
  }
}

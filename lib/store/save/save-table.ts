import type { ReadingTable } from '@/lib/measure';
import { loading, transaction, type Queries } from '@/lib/store/connection/database';
import { inputsChanged } from '@/lib/store/shop/get-shop';
import { among } from '@/lib/store/sql/among';
import { ask } from '@/lib/store/sql/ask';
import type { Rows } from '@/lib/store/sql/rows';
import type { Actor, SaveSummary, ShopId, SourceFile } from '@/lib/store/types';
import { FileBeingSaved } from './file-being-saved';
import { tableReadings, type FileReadings } from './file-readings';
import { inChunks } from './in-chunks';
import { layOut } from './lay-out';
import { Contradicted, NewJobsBeingSaved } from './new-jobs-being-saved';
import { readKnown } from './read-known';
import type { NewRows } from './new-rows';
import { saveReadings, summaryOf } from './save-readings';
import { writeLaidOut } from './write-batch';

/** Lines that are worked on at once: what is held of a file beside its table does not grow with it. */
const LINES_AT_ONCE = 4_000;
/** Pieces that are laid out ahead, where that is done on another thread. */
const AHEAD = 3;
/** The same where each piece is first looked up. */
const LOOKED_UP_AT_ONCE = 10_000;

/** Readings from which on a file is large: fewer are stored before their indexes would be sorted. */
const LARGE = 30_000;

/**
 * Tables whose rows, of new jobs, refer to rows of this very transaction alone: ids that it handed out, or was given
 * for what it wrote before. What has no id is refused as missing. `tests/property/store/new-jobs.test.ts` has the
 * database look all of it up.
 */
export const FOR_NEW_JOBS = ['Setup', 'Observation', 'Reading'];

/** Tables whose indexes a large file is stored without; of `Job` it is asked whether a job is there. */
export const INDEXED = [...FOR_NEW_JOBS, 'Round', 'JobTechnician', 'JobOutcome', 'RecheckOutcome'];

/** Tables whose CHECKs `NewJobsWriter` asks of rows before it writes them. */
export const CHECKED = FOR_NEW_JOBS;

/**
 * Stores the readings of a table as `saveReadings` stores a list, in memory that does not grow with them.
 * @param tell told the share that is written, from 0 to 1.
 * @throws StoreConflict naming every line that contradicts what is stored.
 */
export const saveTable = (
  shop: ShopId,
  table: ReadingTable,
  file: SourceFile,
  actor: Actor,
  tell?: (share: number) => void,
): Promise<SaveSummary> => saveFileReadings(shop, tableReadings(table), file, actor, tell);

/**
 * The same, wherever the readings are held.
 * @param large whether the file brings more than is stored already, and much, if that is known.
 */
export async function saveFileReadings(
  shop: ShopId,
  readings: FileReadings,
  file: SourceFile,
  actor: Actor,
  tell: (share: number) => void = () => undefined,
  large?: boolean,
): Promise<SaveSummary> {
  const asLarge = large ?? (await isLarge(readings.size));
  const save = async (queries: Queries, rows: Rows) => {
    const saved = new FileBeingSaved(queries, shop, file);
    const all = new TableBeingSaved(queries, rows, shop, readings, saved, tell, asLarge);
    return { result: await all.save(actor), sound: all.onlyNew ? FOR_NEW_JOBS : [] };
  };
  try {
    return await (asLarge
      ? loading(shop, { shutOut: false }, save)
      : transaction(shop, save).then(({ result }) => result));
  } catch (error) {
    if (!(error instanceof Contradicted)) throw error;
    return saveReadings(shop, await readings.all(), file, actor);
  }
}

/** Whether a file brings more than is stored already, and much. */
export async function isLarge(size: number): Promise<boolean> {
  if (size < LARGE) return false;
  const [all] = await ask<{ stored: number | bigint }>`
    SELECT coalesce(sum("readingCount"), 0) AS "stored" FROM "Job"`;
  return size > Number(all?.stored ?? 0);
}

class TableBeingSaved {
  private readonly gained = new Set<number>();
  private readonly summary = {
    added: 0,
    alreadyThere: 0,
    causes: 0,
    newJobs: 0,
    newSetups: 0,
    newSheets: 0,
    people: new Set<string>(),
    gauges: new Set<string>(),
  };
  private done = 0;
  /** Whether no job was there before. */
  onlyNew = false;

  constructor(
    private readonly queries: Queries,
    private readonly rows: Rows,
    private readonly shop: ShopId,
    private readonly table: FileReadings,
    private readonly file: FileBeingSaved,
    private readonly tell: (share: number) => void,
    private readonly large: boolean,
  ) {}

  async save(actor: Actor): Promise<SaveSummary> {
    const known = await this.knownJobs();
    const all = this.table.jobs.map((_, job) => job);
    this.onlyNew = known.size === 0;
    await this.saveNew(all.filter((job) => !known.has(this.table.jobs[job] ?? '')));
    await this.saveKnown(all.filter((job) => known.has(this.table.jobs[job] ?? '')));
    const { people, gauges, ...counts } = this.summary;
    const jobs = all.filter((job) => this.gained.has(job)).map((job) => this.table.jobs[job] ?? '');
    if (jobs.length > 0) {
      await inputsChanged(this.queries, this.shop);
      await this.file.tell(actor, { ...counts, jobs: jobs.length });
    }
    const [newPeople, newGauges] = [[...people].sort(), [...gauges].sort()];
    return { ...counts, jobs, newPeople, newGauges };
  }

  private async knownJobs(): Promise<Set<string>> {
    const rows = await inChunks(
      this.table.jobs,
      (numbers) => this.queries.$queryRaw<{ number: string }[]>`
        SELECT "number" FROM "Job" WHERE "shopId" = ${this.shop} AND "number" ${among(numbers)}`,
    );
    return new Set(rows.map(({ number }) => number));
  }

  private async saveNew(jobs: readonly number[]): Promise<void> {
    if (jobs.length === 0) return;
    const saved = new NewJobsBeingSaved(this.queries, this.rows, this.shop, await this.file.id());
    await saved.name(await this.table.samples());
    const write = async () => {
      for await (const { some, piece } of this.laidOut(jobs)) {
        await saved.write(piece);
        for (const job of some) this.gained.add(job);
        this.report(some);
      }
    };
    await (this.large ? this.rows.withoutIndexes(INDEXED, CHECKED, write) : write());
    const { people, gauges, newSheets } = saved;
    this.note({ newSheets, newPeople: [...people], newGauges: [...gauges] });
    this.summary.added += saved.counts.added;
    this.summary.causes += saved.counts.causes;
    this.summary.newSetups += saved.counts.newSetups;
    this.summary.newJobs += saved.jobs;
  }

  private async *laidOut(jobs: readonly number[]): AsyncGenerator<{ some: number[]; piece: NewRows }> {
    const ahead: { some: number[]; piece: Promise<NewRows> }[] = [];
    for (const some of this.pieces(jobs, LINES_AT_ONCE)) {
      const piece = this.table.layOut(some);
      // Whoever waits for it hears of it.
      piece.catch(() => undefined);
      ahead.push({ some, piece });
      const next = ahead.length > AHEAD ? ahead.shift() : undefined;
      if (next !== undefined) yield { some: next.some, piece: await next.piece };
    }
    for (const { some, piece } of ahead) yield { some, piece: await piece };
  }

  /** Jobs of which something is stored: each line is looked up. */
  private async saveKnown(jobs: readonly number[]): Promise<void> {
    for (const some of this.pieces(jobs, LOOKED_UP_AT_ONCE)) {
      const readings = await this.table.readingsOf(some);
      const known = await readKnown(this.queries, this.shop, readings);
      const { batch, conflicts } = layOut(readings, known);
      if (conflicts.length > 0) throw new Contradicted();
      const saved = summaryOf(batch, known);
      this.summary.alreadyThere += saved.alreadyThere;
      if (saved.jobs.length > 0) {
        const origin = { fileId: await this.file.id() };
        const { causes } = await writeLaidOut(this.queries, this.shop, { batch, known }, origin);
        this.note(saved);
        this.summary.added += saved.added;
        this.summary.causes += causes;
        this.summary.newSetups += saved.newSetups;
        const names = new Set(saved.jobs);
        for (const job of some) if (names.has(this.table.jobs[job] ?? '')) this.gained.add(job);
      }
      this.report(some);
    }
  }

  private note({
    newPeople,
    newGauges,
    newSheets,
  }: Pick<SaveSummary, 'newPeople' | 'newGauges' | 'newSheets'>): void {
    for (const code of newPeople) this.summary.people.add(code);
    for (const tag of newGauges) this.summary.gauges.add(tag);
    this.summary.newSheets += newSheets;
  }

  private *pieces(jobs: readonly number[], atOnce: number): Generator<number[]> {
    let piece: number[] = [];
    let lines = 0;
    for (const job of jobs) {
      piece.push(job);
      lines += this.table.lines[job] ?? 0;
      if (lines < atOnce) continue;
      yield piece;
      piece = [];
      lines = 0;
    }
    if (piece.length > 0) yield piece;
  }

  private report(jobs: readonly number[]): void {
    for (const job of jobs) this.done += this.table.lines[job] ?? 0;
    this.tell(this.done / this.table.size);
  }
}

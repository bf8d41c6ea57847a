import { deviationOf, dimensionKey, spreadOf, type Cause, type ReadingTable } from '@/lib/measure';
import { searchable } from '@/lib/store/jobs/searchable';
import { namedValue } from '@/lib/store/sheets/dimension-row';
import type { Rows, RowsOf } from '@/lib/store/sql/rows';
import { storedSide } from '@/lib/store/sql/side';
import { TimeTexts } from '@/lib/store/sql/time-text';
import type { ShopId } from '@/lib/store/types';
import { meanRead } from './collapse-one';
import { JOB_COLUMNS, OUTCOME_COLUMNS, OUTCOME_COUNTS, ROUND_COLUMNS, SETUP_COLUMNS } from './job-columns';
import { isBefore, NewJobs, type NewJob, type NewRound, type NewSetup } from './lay-new-job';
import { DIMENSION_COLUMNS } from './write-parents';

/** Rows of what the shop knows already, by the names of the table. */
export interface KnownIds {
  people: ReadonlyMap<string, number>;
  gauges: ReadonlyMap<string, number>;
  /** By the sheet’s name, then `dimensionKey`. */
  sheets: ReadonlyMap<string, { id: number; dimensions: ReadonlyMap<string, number> }>;
}

const TABLES = [
  ['Sheet', ['id', 'shopId']],
  ['Dimension', ['id', ...DIMENSION_COLUMNS]],
  ['Job', ['id', ...JOB_COLUMNS]],
  ['JobOutcome', OUTCOME_COLUMNS],
  ['JobTechnician', ['jobId', 'technicianId', 'firstAt']],
  ['Round', ['id', ...ROUND_COLUMNS]],
  ['Setup', ['id', ...SETUP_COLUMNS]],
  ['Observation', ['setupId', 'dimensionId', 'n', 'mean', 'deviation', 'ss', 'takenAt', 'cause']],
  ['Reading', ['setupId', 'dimensionId', 'repeat', 'value', 'takenAt', 'fileId', 'line']],
  ['RecheckOutcome', ['shopId', 'setupId', 'side', 'cause', 'at']],
] as const satisfies [string, readonly string[]][];

type Table = (typeof TABLES)[number][0];

/** A sheet of a job that names none: its dimensions are the job's own. */
interface OwnSheet {
  /** By `dimensionKey`; the line that states each. */
  dimensions: Map<string, { at: number; line: number }>;
}

/**
 * Writes jobs of which nothing is stored yet, straight from the table that holds their readings: nothing can stand
 * beside them, so nothing has to be looked up. What is written is what `write-batch.ts` writes of the same readings;
 * `tests/property/store/new-jobs.test.ts` holds both to each other.
 */
export class NewJobsWriter {
  causes = 0;
  setups = 0;
  readings = 0;
  readonly #rows: Record<Table, RowsOf>;
  readonly #times = new TimeTexts();
  readonly #layout: NewJobs;
  /** By sheet and number as stated. */
  readonly #dimensionIds = new Map<number, number>();
  readonly #width: number;

  constructor(
    private readonly rows: Rows,
    private readonly shop: ShopId,
    private readonly table: ReadingTable,
    private readonly known: KnownIds,
    private readonly fileId: number,
  ) {
    this.#layout = new NewJobs(table);
    this.#width = table.lines.stated.all.length;
    this.#rows = Object.fromEntries(
      TABLES.map(([name, columns]) => [name, rows.into(name, columns)]),
    ) as Record<Table, RowsOf>;
  }

  /** Jobs by their number in the table. Holds what the database needs of these at once. */
  async write(jobs: readonly number[]): Promise<void> {
    const sheets = new Map<number, OwnSheet>();
    const laid = jobs.map((job) => this.#layout.lay(job, this.#dimensions(job, sheets)));
    const sheetIds = await this.#writeOwnSheets(sheets);
    const jobIds = await this.#ids('Job', laid.length);
    const roundIds = await this.#ids(
      'Round',
      sum(laid, ({ rounds }) => rounds.length),
    );
    const setupIds = await this.#ids(
      'Setup',
      sum(laid, ({ setups }) => setups.length),
    );
    for (const job of laid) {
      const own = sheetIds.get(job.job);
      const name = this.table.sheetOf(job.job);
      const sheetId = own?.id ?? this.known.sheets.get(name ?? '')?.id ?? null;
      this.#writeJob(job, { jobId: jobIds(), sheetId, roundIds, setupIds, own: own?.dimensions ?? null });
    }
    for (const [name] of TABLES) await this.#rows[name].flush();
  }

  async #ids(table: string, count: number): Promise<() => number> {
    const ids = await this.rows.newIds(table, count);
    let next = 0;
    return () => ids[next++] ?? 0;
  }

  /** How the dimension of a line is told apart: by its row, or by its place among those of the job's own sheet. */
  #dimensions(job: number, sheets: Map<number, OwnSheet>): (line: number) => number {
    const name = this.table.sheetOf(job);
    const { statedAt } = this.table.lines;
    if (name === null) {
      const own: OwnSheet = { dimensions: new Map() };
      sheets.set(job, own);
      return (line) => {
        const key = dimensionKey(this.table.dimensionAt(line));
        const there = own.dimensions.get(key) ?? { at: own.dimensions.size, line };
        own.dimensions.set(key, there);
        return there.at;
      };
    }
    const sheet = this.known.sheets.get(name);
    if (sheet === undefined) throw new Error(`Sheet ${name} was to be stored before its jobs.`);
    return (line) => {
      const key = sheet.id * this.#width + (statedAt[line] ?? 0);
      const found = this.#dimensionIds.get(key);
      if (found !== undefined) return found;
      const id = sheet.dimensions.get(dimensionKey(this.table.dimensionAt(line)));
      if (id === undefined) throw new Error(`A dimension of sheet ${name} was to be stored before its jobs.`);
      this.#dimensionIds.set(key, id);
      return id;
    };
  }

  async #writeOwnSheets(
    sheets: ReadonlyMap<number, OwnSheet>,
  ): Promise<Map<number, { id: number; dimensions: number[] }>> {
    const written = new Map<number, { id: number; dimensions: number[] }>();
    const sheetIds = await this.#ids('Sheet', sheets.size);
    const dimensionIds = await this.#ids(
      'Dimension',
      sum([...sheets.values()], ({ dimensions }) => dimensions.size),
    );
    for (const [job, { dimensions }] of sheets) {
      const id = sheetIds();
      this.#rows.Sheet.add([id, this.shop]);
      const ids: number[] = [];
      for (const { line } of dimensions.values()) {
        const dimension = this.table.dimensionAt(line);
        const { quantity, point, side, section, station, zero, nominal, tolerance } = dimension;
        const dimensionId = dimensionIds();
        ids.push(dimensionId);
        this.#rows.Dimension.add([
          ...[dimensionId, id, quantity, point, storedSide(side), section, station],
          ...[this.rows.truth(zero), nominal, tolerance, namedValue(dimension)],
        ]);
      }
      written.set(job, { id, dimensions: ids });
    }
    return written;
  }

  #writeJob(job: NewJob, ids: JobIds): void {
    const { jobId, sheetId } = ids;
    const { jobs, takenAt } = this.table.lines;
    const number = jobs.all[job.job] ?? '';
    const first = job.setups.reduce<NewSetup | null>((a, b) => (isBefore(b, a) ? b : a), null);
    if (first === null) return;
    const last = job.rounds.reduce((a, b) => (order(b) > order(a) ? b : a));
    const lastReadAt = job.lines.reduce((latest, line) => Math.max(latest, takenAt[line] ?? 0), -Infinity);
    this.#rows.Job.add([
      ...[jobId, this.shop, number, sheetId, searchable(`${number} ${this.table.sheetOf(job.job) ?? ''}`)],
      ...[this.#times.of(first.hungAt), this.#times.of(lastReadAt), last.stage, last.attempt],
      ...[this.#person(first.technician), job.rounds.length, job.setups.length, job.lines.length, 1],
    ]);
    // Every job has its rollup from the first moment, with no answer yet.
    this.#rows.JobOutcome.add([this.shop, jobId, 0, ...OUTCOME_COUNTS.map(() => 0)]);
    const since = new Map<number, number>();
    for (const { technician, hungAt } of job.setups)
      since.set(technician, Math.min(hungAt, since.get(technician) ?? Infinity));
    for (const [technician, at] of since)
      this.#rows.JobTechnician.add([jobId, this.#person(technician), this.#times.of(at)]);
    const rounds = new Map<NewRound, number>();
    for (const round of job.rounds) {
      const id = ids.roundIds();
      rounds.set(round, id);
      const { stage, attempt, clearance, first: hung } = round;
      this.#rows.Round.add([
        ...[id, this.shop, jobId, stage, attempt, clearance],
        ...[this.#person(hung?.technician ?? 0), this.#times.of(hung?.hungAt ?? 0)],
      ]);
    }
    for (const setup of job.setups) {
      const id = ids.setupIds();
      const hand = [this.#person(setup.technician), this.#gauge(setup.gauge)];
      const roundId = rounds.get(setup.round) ?? null;
      this.#rows.Setup.add([
        ...[id, this.shop, jobId, roundId, setup.label, ...hand, this.#times.of(setup.hungAt)],
      ]);
      this.#writeSetup(job, setup, id, ids.own);
    }
    this.setups += job.setups.length;
    this.readings += job.lines.length;
  }

  #writeSetup(
    job: NewJob,
    { from, to, round }: NewSetup,
    setupId: number,
    own: readonly number[] | null,
  ): void {
    const proved = new Map<string, { cause: Cause; met: number; at: number }>();
    for (let start = from, end = from; start < to; start = end) {
      const dimension = job.dimensions[start] ?? 0;
      while (end < to && job.dimensions[end] === dimension) end++;
      this.#writeObservation(job, { start, end, round, setupId }, own?.[dimension] ?? dimension, proved);
    }
    for (const [side, { cause, at }] of proved)
      this.#rows.RecheckOutcome.add([this.shop, setupId, side, cause, this.#times.of(at)]);
    this.causes += proved.size;
  }

  #writeObservation(
    { lines }: NewJob,
    { start, end, round, setupId }: { start: number; end: number; round: NewRound; setupId: number },
    dimensionId: number,
    proved: Map<string, { cause: Cause; met: number; at: number }>,
  ): void {
    const { table } = this;
    const cells = table.lines;
    const dimension = table.dimensionAt(lines[start] ?? 0);
    const clearance = round.clearance ?? 0;
    const deviations: number[] = [];
    let first = Infinity;
    let met = Infinity;
    let cause: Cause | null = null;
    for (let k = start; k < end; k++) {
      const line = lines[k] ?? 0;
      const { quantity, nominal } = dimension;
      deviations.push(deviationOf({ quantity, nominal, clearance, value: cells.value[line] ?? 0 }));
      first = Math.min(first, cells.takenAt[line] ?? 0);
      met = Math.min(met, line);
      cause ??= cells.asides.all[cells.asideAt[line] ?? 0]?.cause ?? null;
    }
    const { n, mean: deviation, ss } = spreadOf(deviations);
    const mean = meanRead({ ...dimension, deviation }, round.clearance);
    this.#rows.Observation.add([setupId, dimensionId, n, mean, deviation, ss, this.#times.of(first), cause]);
    for (let k = start; k < end; k++) {
      const line = lines[k] ?? 0;
      this.#rows.Reading.add([
        ...[setupId, dimensionId, cells.repeat[line] ?? 0, cells.value[line] ?? 0],
        ...[this.#times.of(cells.takenAt[line] ?? 0), this.fileId, cells.line[line] ?? 0],
      ]);
    }
    if (cause === null) return;
    // Of several dimensions of a side the one that the file names last says when it was proved.
    const side = storedSide(dimension.side);
    if (met > (proved.get(side)?.met ?? -1)) proved.set(side, { cause, met, at: first });
  }

  #person(technician: number): number | null {
    return this.known.people.get(this.table.lines.technicians.all[technician] ?? '') ?? null;
  }

  #gauge(gauge: number): number | null {
    return this.known.gauges.get(this.table.lines.gauges.all[gauge] ?? '') ?? null;
  }
}

interface JobIds {
  jobId: number;
  sheetId: number | null;
  roundIds: () => number;
  setupIds: () => number;
  /** Rows of the job's own dimensions; null where its sheet has a name. */
  own: readonly number[] | null;
}

const order = ({ stage, attempt }: NewRound) => (stage === 'after' ? 1e6 : 0) + attempt;
const sum = <Of>(all: readonly Of[], of: (one: Of) => number) =>
  all.reduce((total, one) => total + of(one), 0);

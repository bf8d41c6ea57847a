import { searchable } from '@/lib/store/jobs/searchable';
import { namedValue } from '@/lib/store/sheets/dimension-row';
import type { Rows, RowsOf } from '@/lib/store/sql/rows';
import { storedSide } from '@/lib/store/sql/side';
import type { ShopId } from '@/lib/store/types';
import { JOB_COLUMNS, OUTCOME_COLUMNS, OUTCOME_COUNTS, ROUND_COLUMNS, SETUP_COLUMNS } from './job-columns';
import { brokenCheck } from './broken-check';
import { CAUSES, type NewNames, type NewRows } from './new-rows';
import { DIMENSION_COLUMNS } from './write-parents';

/** Rows of what the shop knows already, by the names of the file; of dimensions by `dimensionKey`. */
export interface KnownIds {
  people: ReadonlyMap<string, number>;
  gauges: ReadonlyMap<string, number>;
  sheets: ReadonlyMap<string, { id: number; dimensions: ReadonlyMap<string, number> }>;
}

/** In the order in which they refer to each other. */
const TABLES = [
  ['Sheet', ['id', 'shopId']],
  ['Dimension', ['id', ...DIMENSION_COLUMNS]],
  ['Job', ['id', ...JOB_COLUMNS]],
  ['JobOutcome', OUTCOME_COLUMNS],
  ['JobTechnician', ['jobId', 'technicianId', 'firstAt']],
  ['Round', ['id', ...ROUND_COLUMNS]],
  ['Setup', ['id', ...SETUP_COLUMNS.filter((column) => column !== 'shopId')]],
  ['Observation', ['setupId', 'dimensionId', 'n', 'mean', 'deviation', 'ss', 'takenAt', 'cause']],
  ['Reading', ['setupId', 'dimensionId', 'repeat', 'value', 'takenAt', 'line']],
  ['RecheckOutcome', ['shopId', 'setupId', 'side', 'cause', 'at']],
] as const satisfies [string, readonly string[]][];

type Table = (typeof TABLES)[number][0];

/** Writes jobs of which nothing is stored yet, as `lay-new-jobs.ts` lays them out. */
export class NewJobsWriter {
  causes = 0;
  setups = 0;
  readings = 0;
  readonly #rows: Record<Table, RowsOf>;
  /** By the numbers that they have in the file. */
  readonly #people: (number | null)[] = [];
  readonly #gauges: (number | null)[] = [];
  readonly #labels: string[] = [];
  readonly #dimensions: number[] = [];

  /** @param known at least what a piece names, by the time it is written. */
  constructor(
    private readonly rows: Rows,
    private readonly shop: ShopId,
    private readonly known: KnownIds,
    fileId: number,
  ) {
    const same: Partial<Record<Table, Record<string, number>>> = {
      Setup: { shopId: shop },
      Reading: { fileId },
    };
    this.#rows = Object.fromEntries(
      TABLES.map(([name, columns]) => [name, rows.into(name, columns, same[name])]),
    ) as Record<Table, RowsOf>;
  }

  /**
   * Holds what the database needs of these at once. What CHECKs ask of `Setup`, `Observation` and `Reading` is asked here.
   * @throws Error where one would be broken.
   */
  async write(piece: NewRows): Promise<void> {
    const broken = brokenCheck(piece);
    if (broken !== null)
      throw new Error(`Rows would break a rule of the database: ${broken}. Nothing was stored.`);
    this.#learn(piece.named);
    const own = await this.#writeOwnSheets(piece);
    const jobs = await this.rows.newIds('Job', piece.jobs.length);
    const rounds = await this.rows.newIds('Round', piece.rounds.length);
    const setups = await this.rows.newIds('Setup', piece.setups.count);
    this.#writeJobs(piece, jobs, own.sheets);
    await this.#rows.Job.flush();
    this.#writeWithJobs(piece, jobs);
    this.#writeRounds(piece, jobs, rounds);
    await this.#rows.Round.flush();
    this.#writeSetups(piece, { jobs, rounds, setups });
    await this.#rows.Setup.flush();
    this.#writeObservations(piece, setups, own.dimensions);
    await this.#rows.Observation.flush();
    this.#writeReadings(piece, setups, own.dimensions);
    for (const { setup, side, cause, at } of piece.proved)
      this.#rows.RecheckOutcome.add(
        this.shop,
        setups[setup] ?? null,
        side,
        causeOf(cause),
        this.rows.time(at),
      );
    for (const table of Object.values(this.#rows)) await table.flush();
    this.setups += piece.setups.count;
    this.readings += piece.readings.count;
    this.causes += piece.proved.length;
  }

  #learn({ technicians, gauges, labels, dimensions }: NewNames): void {
    const { people, gauges: tags, sheets } = this.known;
    for (const code of technicians) this.#people.push(people.get(code) ?? null);
    for (const tag of gauges) this.#gauges.push(tags.get(tag) ?? null);
    for (const label of labels) this.#labels.push(label);
    for (const { sheet, key } of dimensions) {
      const id = sheets.get(sheet)?.dimensions.get(key);
      if (id === undefined)
        throw new Error(`A dimension of sheet ${sheet} was to be stored before its jobs.`);
      this.#dimensions.push(id);
    }
  }

  /** Sheets of jobs that name none, by the job's place, and the rows of all their dimensions. */
  async #writeOwnSheets({ own }: NewRows): Promise<{ sheets: Map<number, number>; dimensions: number[] }> {
    const sheets = new Map<number, number>();
    const sheetIds = await this.rows.newIds('Sheet', own.length);
    const all = own.flatMap(({ job, dimensions }, index) => {
      const sheetId = sheetIds[index] ?? 0;
      sheets.set(job, sheetId);
      this.#rows.Sheet.add(sheetId, this.shop);
      return dimensions.map((dimension) => ({ sheetId, dimension }));
    });
    await this.#rows.Sheet.flush();
    const ids = await this.rows.newIds('Dimension', all.length);
    for (const [index, { sheetId, dimension }] of all.entries()) {
      const { quantity, point, side, section, station, zero, nominal, tolerance } = dimension;
      this.#rows.Dimension.add(
        ...[ids[index] ?? null, sheetId, quantity, point, storedSide(side), section, station],
        ...[this.rows.truth(zero), nominal, tolerance, namedValue(dimension)],
      );
    }
    await this.#rows.Dimension.flush();
    return { sheets, dimensions: ids };
  }

  #writeJobs({ jobs }: NewRows, ids: readonly number[], own: ReadonlyMap<number, number>) {
    for (const [index, job] of jobs.entries()) {
      const id = ids[index] ?? null;
      const sheetId = own.get(index) ?? this.known.sheets.get(job.sheet ?? '')?.id ?? null;
      this.#rows.Job.add(
        ...[id, this.shop, job.number, sheetId, searchable(`${job.number} ${job.sheet ?? ''}`)],
        ...[this.rows.time(job.openedAt), this.rows.time(job.lastReadAt), job.lastStage, job.lastAttempt],
        ...[this.#people[job.technician] ?? null, job.rounds, job.setups, job.readings, 1],
      );
    }
  }

  /** Every job has its rollup from the first moment, with no answer yet. */
  #writeWithJobs({ jobs }: NewRows, ids: readonly number[]) {
    const zeros = OUTCOME_COUNTS.map(() => 0);
    for (const [index, job] of jobs.entries()) {
      const id = ids[index] ?? null;
      this.#rows.JobOutcome.add(this.shop, id, 0, ...zeros);
      for (const [technician, at] of job.hands)
        this.#rows.JobTechnician.add(id, this.#people[technician] ?? null, this.rows.time(at));
    }
  }

  #writeRounds({ rounds }: NewRows, jobs: readonly number[], ids: readonly number[]) {
    for (const [index, round] of rounds.entries()) {
      const { job, stage, attempt, clearance, technician, startedAt } = round;
      const hand = this.#people[technician] ?? null;
      this.#rows.Round.add(
        ...[ids[index] ?? null, this.shop, jobs[job] ?? null, stage, attempt, clearance, hand],
        this.rows.time(startedAt),
      );
    }
  }

  #writeSetups(
    { setups }: NewRows,
    ids: { jobs: readonly number[]; rounds: readonly number[]; setups: readonly number[] },
  ) {
    const labels = this.#labels;
    const { count, job, round, label, technician, gauge, hungAt } = setups;
    for (let k = 0; k < count; k++)
      this.#rows.Setup.add(
        ids.setups[k] ?? null,
        ids.jobs[job[k] ?? 0] ?? null,
        ids.rounds[round[k] ?? 0] ?? null,
        labels[label[k] ?? 0] ?? null,
        this.#people[technician[k] ?? 0] ?? null,
        this.#gauges[gauge[k] ?? 0] ?? null,
        this.rows.time(hungAt[k] ?? 0),
      );
  }

  #writeObservations({ observations: all }: NewRows, setups: readonly number[], own: readonly number[]) {
    const { count, setup, dimension, n, mean, deviation, ss, takenAt, cause } = all;
    for (let k = 0; k < count; k++)
      this.#rows.Observation.add(
        setups[setup[k] ?? 0] ?? null,
        this.#dimensionOf(dimension[k] ?? 0, own),
        n[k] ?? null,
        mean[k] ?? null,
        deviation[k] ?? null,
        ss[k] ?? null,
        this.rows.time(takenAt[k] ?? 0),
        causeOf(cause[k] ?? -1),
      );
  }

  #writeReadings(
    { observations: { setup, dimension }, readings }: NewRows,
    setups: readonly number[],
    own: readonly number[],
  ) {
    const { count, observation, repeat, value, takenAt, line } = readings;
    for (let k = 0; k < count; k++) {
      const of = observation[k] ?? 0;
      this.#rows.Reading.add(
        setups[setup[of] ?? 0] ?? null,
        this.#dimensionOf(dimension[of] ?? 0, own),
        repeat[k] ?? null,
        value[k] ?? null,
        this.rows.time(takenAt[k] ?? 0),
        line[k] ?? null,
      );
    }
  }

  #dimensionOf(number: number, own: readonly number[]): number | null {
    return (number < 0 ? own[-1 - number] : this.#dimensions[number]) ?? null;
  }
}

// Most have none, and what stands at no place of a list is looked up the long way.
const causeOf = (place: number) => (place < 0 ? null : (CAUSES[place] ?? null));

import { dimensionKey, type Reading } from '@/lib/measure';
import type { Conflict } from '@/lib/store/types';
import type { Batch, BatchJob, BatchObservation, BatchRound, BatchSetup, BatchSheet } from './batch';
import { dimensionFaults } from './dimension-faults';
import { lengthConflicts } from './length-conflicts';
import { observationKey, roundKey, type Known } from './known';

/** Lays readings out beside what is known, and names every line that contradicts it or another line. */
export function layOut(readings: readonly Reading[], known: Known): { batch: Batch; conflicts: Conflict[] } {
  const layout = new Layout(known);
  for (const reading of readings) layout.take(reading);
  return { batch: layout.batch, conflicts: [...layout.conflicts, ...lengthConflicts(layout.newLengths)] };
}

class Layout {
  readonly conflicts: Conflict[] = [];
  readonly batch: Batch = {
    people: new Set(),
    gauges: new Map(),
    sheets: [],
    jobs: new Map(),
    alreadyThere: 0,
  };
  readonly #sheets = new Map<string, BatchSheet>();
  /** Readings of lengths that are not stored yet. */
  readonly newLengths = new Map<BatchSheet, Reading[]>();
  #line = 0;

  constructor(private readonly known: Known) {}

  take(reading: Reading): void {
    this.#line = reading.line;
    const before = this.conflicts.length;
    this.batch.people.add(reading.technician);
    this.#gauge(reading);
    const job = this.#job(reading);
    const round = this.#round(job, reading);
    const setup = this.#setup(job, round, reading);
    const observation = this.#observation(job, setup, reading);
    this.#cause(observation, reading);
    if (this.conflicts.length === before) this.#reading(observation, reading);
  }

  #refuse(column: string, reason: string): void {
    this.conflicts.push({ line: this.#line, column, reason });
  }

  #gauge({ gauge: tag, gaugeKind }: Reading): void {
    const known = this.known.gauges.get(tag) ?? null;
    const gauge = this.batch.gauges.get(tag) ?? { tag, kind: known?.kind ?? null, known };
    this.batch.gauges.set(tag, gauge);
    if (gaugeKind === null) return;
    gauge.kind ??= gaugeKind;
    if (gauge.kind === gaugeKind) return;
    this.#refuse('gauge_kind', `Gauge ${tag} is known as ${gauge.kind}, this line says ${gaugeKind}.`);
  }

  #job(reading: Reading): BatchJob {
    const { job: number, sheet: name } = reading;
    let job = this.batch.jobs.get(number);
    if (job === undefined) {
      const known = this.known.jobs.get(number) ?? null;
      const sheet = this.#sheet(number, known === null ? name : known.sheet.name);
      job = { number, known, sheet, rounds: new Map(), setups: new Map() };
      if (known !== null) sheet.known ??= known.sheet;
      this.batch.jobs.set(number, job);
    }
    if (name !== null && name !== job.sheet.name) {
      const stated = job.sheet.name === null ? 'without a sheet' : `against sheet ${job.sheet.name}`;
      this.#refuse('sheet', `Job ${number} is measured ${stated}, this line says ${name}.`);
    }
    return job;
  }

  #sheet(job: string, name: string | null): BatchSheet {
    const key = name === null ? `job ${job}` : `sheet ${name}`;
    const laid = this.#sheets.get(key);
    if (laid !== undefined) return laid;
    const known = name === null ? null : (this.known.sheets.get(name) ?? null);
    const sheet: BatchSheet = { name, known, dimensions: new Map() };
    this.#sheets.set(key, sheet);
    this.batch.sheets.push(sheet);
    return sheet;
  }

  #round(job: BatchJob, { stage, attempt, quantity, clearance }: Reading): BatchRound {
    const key = roundKey(stage, attempt);
    let round = job.rounds.get(key);
    if (round === undefined) {
      const known = job.known?.rounds.get(key) ?? null;
      round = { stage, attempt, clearance: known?.clearance ?? null, known };
      job.rounds.set(key, round);
    }
    if (quantity !== 'height') return round;
    round.clearance ??= clearance;
    if (round.clearance !== clearance) {
      const place = `Round ${stage} ${attempt} of job ${job.number}`;
      this.#refuse(
        'clearance_mm',
        `${place} has a clearance of ${round.clearance} mm, this line says ${clearance}.`,
      );
    }
    return round;
  }

  #setup(job: BatchJob, round: BatchRound, reading: Reading): BatchSetup {
    const { setup: label, technician, gauge } = reading;
    let setup = job.setups.get(label);
    if (setup === undefined) {
      const known = job.known?.setups.get(label) ?? null;
      setup = {
        label,
        known,
        round,
        technician: known?.technician ?? technician,
        gauge: known?.gauge ?? gauge,
        observations: new Map(),
      };
      job.setups.set(label, setup);
    }
    const name = `Setup ${label} of job ${job.number}`;
    const home = setup.known?.round ?? setup.round;
    if (home.stage !== round.stage || home.attempt !== round.attempt) {
      const said = `${round.stage} ${round.attempt}`;
      this.#refuse(
        'setup',
        `${name} belongs to round ${home.stage} ${home.attempt}, this line says ${said}.`,
      );
    }
    if (setup.technician !== technician) {
      this.#refuse('technician', `${name} was hung by ${setup.technician}, this line says ${technician}.`);
    }
    if (setup.gauge !== gauge) {
      this.#refuse('gauge', `${name} is of gauge ${setup.gauge}, this line says ${gauge}.`);
    }
    return setup;
  }

  #observation(job: BatchJob, setup: BatchSetup, reading: Reading): BatchObservation {
    const key = dimensionKey(reading);
    let dimension = job.sheet.dimensions.get(key);
    if (dimension === undefined) {
      const known = job.sheet.known?.dimensions.get(key) ?? null;
      dimension = { stated: { ...(known ?? onlyDimension(reading)) }, known };
      job.sheet.dimensions.set(key, dimension);
    }
    if (reading.quantity === 'length' && dimension.known === null) {
      const waiting = this.newLengths.get(job.sheet);
      if (waiting === undefined) this.newLengths.set(job.sheet, [reading]);
      else waiting.push(reading);
    }
    dimension.stated.section ??= reading.section;
    for (const { column, reason } of dimensionFaults(dimension.stated, reading)) this.#refuse(column, reason);
    let observation = setup.observations.get(key);
    if (observation === undefined) {
      const id =
        setup.known === null || dimension.known === null
          ? null
          : ([setup.known.id, dimension.known.id] as const);
      const known = id === null ? null : (this.known.observations.get(observationKey(...id)) ?? null);
      const readings = new Map(known?.readings);
      observation = { dimension, known, readings, added: [], cause: known?.cause ?? null, newCause: false };
      setup.observations.set(key, observation);
    }
    return observation;
  }

  #cause(observation: BatchObservation, { cause }: Reading): void {
    if (cause === null || cause === observation.cause || observation.known?.causes.has(cause) === true)
      return;
    if (observation.cause !== null) {
      this.#refuse(
        'cause',
        `The re-check of this setup showed ${observation.cause}, this line says ${cause}.`,
      );
      return;
    }
    observation.cause = cause;
    observation.newCause = true;
  }

  #reading(observation: BatchObservation, reading: Reading): void {
    const { repeat, value, takenAt } = reading;
    const there = observation.readings.get(repeat);
    if (there === undefined) {
      observation.readings.set(repeat, { value, takenAt, counts: value });
      observation.added.push(reading);
      return;
    }
    const name = `Reading ${repeat} of ${dimensionKey(reading)} in setup ${reading.setup} of job ${reading.job}`;
    // A download holds the corrected value: loading it again adds nothing either.
    if (there.value !== value && there.counts !== value) {
      const corrected =
        there.counts === null || there.counts === there.value ? '' : `, corrected to ${there.counts} mm`;
      this.#refuse(
        'value_mm',
        `${name} is stored as ${there.value} mm${corrected}, this line says ${value}.`,
      );
    } else if (there.takenAt !== takenAt) {
      const [stored, said] = [there.takenAt, takenAt].map((time) => new Date(time).toISOString());
      this.#refuse(
        'taken_at',
        `${name} is stored as taken at ${stored ?? ''}, this line says ${said ?? ''}.`,
      );
    } else {
      this.batch.alreadyThere += 1;
    }
  }
}

const onlyDimension = ({ quantity, point, side, section, station, zero, nominal, tolerance }: Reading) => ({
  quantity,
  point,
  side,
  section,
  station,
  zero,
  nominal,
  tolerance,
});

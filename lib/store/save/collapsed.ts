import { collapse, dimensionKey, type Observation, type Reading } from '@/lib/measure';
import { gains, type Batch, type BatchJob, type BatchObservation, type BatchSetup } from './batch';
import { asInFile, type Place } from './collapse-one';

/**
 * The collapsed form of every observation that gains something, stored and new readings together. One whose
 * readings are all excluded has none.
 */
export function collapsed(batch: Batch): Map<BatchObservation, Observation> {
  const found = new Map<BatchObservation, Observation>();
  for (const job of batch.jobs.values()) {
    for (const { rounds } of collapse(readingsOf(job))) {
      for (const setup of rounds.flatMap((round) => round.setups)) {
        const laid = job.setups.get(setup.label);
        for (const form of setup.observations) {
          const observation = laid?.observations.get(dimensionKey(form));
          if (observation !== undefined) found.set(observation, { ...form, cause: observation.cause });
        }
      }
    }
  }
  return found;
}

function readingsOf(job: BatchJob): Reading[] {
  const readings: Reading[] = [];
  for (const setup of job.setups.values()) {
    for (const observation of setup.observations.values()) {
      if (!gains(observation)) continue;
      for (const reading of observation.added) readings.push(reading);
      for (const reading of storedReadings(job, setup, observation)) readings.push(reading);
    }
  }
  return readings;
}

/** The stored readings of an observation that count. */
function storedReadings(job: BatchJob, setup: BatchSetup, observation: BatchObservation): Reading[] {
  const { stage, attempt, clearance } = setup.round;
  const place: Place = {
    job: job.number,
    sheet: job.sheet.name,
    stage,
    attempt,
    clearance: clearance ?? 0,
    technician: setup.technician,
    gauge: setup.gauge,
    setup: setup.label,
    dimension: observation.dimension.stated,
  };
  const counting = [...(observation.known?.readings ?? [])].flatMap(([repeat, { counts, takenAt }]) =>
    counts === null ? [] : [{ repeat, value: counts, takenAt }],
  );
  return asInFile(place, counting);
}

import { collapse, dimensionKey, type Observation, type Reading } from '@/lib/measure';
import { gains, type Batch, type BatchObservation } from './batch';

/** The collapsed form of every observation that gains something, stored and new readings together. */
export function collapsed(batch: Batch): Map<BatchObservation, Observation> {
  const readings: Reading[] = [];
  const places = new Map<string, BatchObservation>();
  for (const job of batch.jobs.values()) {
    for (const setup of job.setups.values()) {
      for (const [key, observation] of setup.observations) {
        if (!gains(observation)) continue;
        places.set(place(job.number, setup.label, key), observation);
        for (const [repeat, { value, takenAt }] of observation.readings) {
          readings.push({
            ...observation.dimension.stated,
            line: repeat,
            job: job.number,
            sheet: job.sheet.name,
            stage: setup.round.stage,
            attempt: setup.round.attempt,
            takenAt,
            technician: setup.technician,
            gauge: setup.gauge,
            gaugeKind: null,
            setup: setup.label,
            clearance: setup.round.clearance ?? 0,
            repeat,
            value,
            cause: observation.cause,
          });
        }
      }
    }
  }
  const found = new Map<BatchObservation, Observation>();
  for (const job of collapse(readings)) {
    for (const round of job.rounds) {
      for (const setup of round.setups) {
        for (const observation of setup.observations) {
          const to = places.get(place(job.job, setup.label, dimensionKey(observation)));
          if (to !== undefined) found.set(to, observation);
        }
      }
    }
  }
  return found;
}

const place = (job: string, setup: string, key: string) => JSON.stringify([job, setup, key]);

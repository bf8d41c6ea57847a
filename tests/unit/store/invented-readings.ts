import { createHash } from 'node:crypto';
import type { Reading } from '@/lib/measure';
import type { Actor, SourceFile } from '@/lib/store';

/** Nobody in particular. */
export const BY_COMMAND: Actor = { person: null, via: 'command' };

/** One reading of an invented sheet; whatever a test is about is overridden. */
export function reading(change: Partial<Reading> = {}): Reading {
  return {
    line: 2,
    job: 'J1',
    sheet: 'S1',
    stage: 'before',
    attempt: 1,
    takenAt: Date.UTC(2026, 2, 2, 8, 0),
    technician: 'T1',
    gauge: 'C1',
    gaugeKind: 'centering',
    setup: 'B1-01',
    quantity: 'height',
    point: 'K',
    side: 'L',
    section: 'front',
    station: 300,
    zero: false,
    nominal: 250,
    tolerance: 3,
    clearance: 100,
    repeat: 1,
    value: 351,
    cause: null,
    ...change,
  };
}

/** Readings numbered by line, as a file holds them. */
export const lines = (changes: readonly Partial<Reading>[]): Reading[] =>
  changes.map((change, index) => reading({ line: index + 2, ...change }));

export function fileNamed(name: string, lineCount = 2): SourceFile {
  return { name, sha256: createHash('sha256').update(name).digest('hex'), lines: lineCount };
}

/**
 * Jobs of a regular pattern without any chance in it: four setups a round with two sides each, two readings
 * a side, before and after.
 */
export function regularShop(jobs: number): Reading[] {
  const readings: Reading[] = [];
  for (let job = 0; job < jobs; job++) {
    for (const [round, stage] of (['before', 'after'] as const).entries()) {
      for (let station = 0; station < 4; station++) {
        for (const side of ['L', 'R'] as const) {
          for (const repeat of [1, 2]) {
            const count = readings.length;
            readings.push(
              reading({
                line: count + 2,
                job: `J${String(job).padStart(6, '0')}`,
                sheet: `S${job % 5}`,
                stage,
                takenAt:
                  Date.UTC(2026, 0, 5, 8, 0) + (job * 40 + round * 20 + station * 4) * 60_000 + repeat * 1000,
                technician: `T${job % 3}`,
                gauge: `C${station}`,
                setup: `${stage}-${station}`,
                point: 'ABCD'.charAt(station),
                side,
                section: station < 2 ? 'front' : 'rear',
                station: station * 700,
                zero: station === 1 || station === 2,
                nominal: 200 + station * 10,
                clearance: 100,
                repeat,
                value:
                  300 + station * 10 + ((count * 7) % 13) / 10 + (side === 'L' && stage === 'before' ? 4 : 0),
              }),
            );
          }
        }
      }
    }
  }
  return readings;
}

import { writeFileSync } from 'node:fs';
import { simulateReadings } from './simulate';

/** Writes simulated readings as little-endian binary columns, which R and Python read without parsing. */
export function writeReadings(folder: string, readings: number, technicians: number, gauges: number): void {
  const data = simulateReadings({ readings, technicians, gauges });
  const bySetup = (codes: Int32Array) => Int32Array.from(data.setup, (s) => codes[s] ?? 0);
  const write = (name: string, column: Float64Array | Int32Array) => {
    writeFileSync(`${folder}/${name}`, new Uint8Array(column.buffer, column.byteOffset, column.byteLength));
  };
  write('value', data.value);
  write('setup', data.setup);
  write('dimension', bySetup(data.dimension));
  write('technician', bySetup(data.technician));
  write('gauge', bySetup(data.gauge));
}

import type { Reading } from '../types';
import { measurementFileLines } from './write';

/** Readings that are turned into text at a time: some 200 kB. */
const CHUNK = 2000;

/** The text of a measurement file, piece by piece; its first piece holds the header even where nothing follows. */
export async function* measurementFileText(
  readings: AsyncIterable<Reading>,
): AsyncGenerator<string, void, undefined> {
  const [header = ''] = measurementFileLines([]);
  const text = (chunk: Reading[]) => [...measurementFileLines(chunk)].slice(1).join('');
  yield header;
  let chunk: Reading[] = [];
  for await (const reading of readings) {
    chunk.push(reading);
    if (chunk.length === CHUNK) {
      yield text(chunk);
      chunk = [];
    }
  }
  if (chunk.length > 0) yield text(chunk);
}

import { dimensionName } from '../dimension';
import type { Reading } from '../types';
import { Lines, setupKey } from './cross';
import type { Draft } from './draft';
import type { Fault } from './fault';
import { KnownSheets } from './known-sheets';
import { checkLengths } from './rules/lengths';
import { checkClearance } from './rules/rounds';
import { checkGauges, checkRepeats, checkSetups } from './rules/setups';
import { checkJobSheets, checkSheets } from './rules/sheets';

export interface NamedReadings {
  /** The file's name. */
  name: string;
  readings: Reading[];
}

export interface JoinedFiles {
  /** All readings, each once. Empty where the files contradict each other. */
  readings: Reading[];
  /** What contradicts another file, with the file's name. */
  faults: { name: string; fault: Fault }[];
  /** How many readings were in more than one file, and are counted once. */
  repeated: number;
}

/** Several accepted files as one shop: a reading that is in two files counts once, and no file contradicts another. */
export function joinFiles(files: readonly NamedReadings[]): JoinedFiles {
  const [only] = files;
  if (files.length === 1 && only !== undefined) return { readings: only.readings, faults: [], repeated: 0 };
  const { readings, repeated } = eachOnce(files);
  const fileOf = new Map<Draft, string>(
    files.flatMap(({ name, readings: own }) => own.map((r) => [r, name])),
  );
  const nameOf = (draft: Draft) => fileOf.get(draft) ?? '';
  const faults: JoinedFiles['faults'] = [];
  const lines = new Lines(
    readings,
    new Set(),
    (fault, draft) => faults.push({ name: nameOf(draft), fault }),
    (draft) => `line ${draft.line} of ${nameOf(draft)}`,
  );
  checkJobSheets(lines);
  checkSetups(lines);
  checkGauges(lines);
  checkRepeats(lines);
  checkLengths(lines, new KnownSheets(undefined));
  checkSheets(lines);
  checkClearance(lines);
  return { readings: faults.length === 0 ? readings : [], faults, repeated };
}

/** Leaves out readings that an earlier file holds already, value and time included. */
function eachOnce(files: readonly NamedReadings[]): { readings: Reading[]; repeated: number } {
  const met = new Set<string>();
  const readings: Reading[] = [];
  let repeated = 0;
  for (const file of files) {
    const own = file.readings.map(
      (r) => `${setupKey(r)}\n${dimensionName(r)}\n${r.repeat} ${r.value} ${r.takenAt}`,
    );
    file.readings.forEach((reading, i) => {
      if (met.has(own[i] ?? '')) repeated++;
      else readings.push(reading);
    });
    for (const key of own) met.add(key);
  }
  return { readings, repeated };
}

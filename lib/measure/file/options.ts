import type { Quantity, Reading, Section, Side } from '../types';
import type { Fault } from './fault';

/** A dimension of a sheet that is known from elsewhere (stored earlier), for what a file may leave out. */
export interface KnownDimension {
  quantity: Quantity;
  point: string;
  side: Side | null;
  nominal: number;
  tolerance?: number;
  station?: number | null;
  section?: Section | null;
  zero?: boolean;
}

/** A known sheet: its dimensions, by `dimensionKey`. */
export type KnownSheet = ReadonlyMap<string, KnownDimension>;

export interface ReadOptions {
  /** The file's name, for messages. */
  name?: string;
  /** The file's size where it is known beforehand, so that one too large is refused before it is read. */
  bytes?: number;
  /** IANA time zone of the shop, for times without an offset. Default UTC. */
  timeZone?: string;
  /** Epoch ms: a reading after this is in the future. Default: the clock. */
  now?: number;
  /** Sheets that are known already, by name. */
  knownSheets?: (sheet: string) => KnownSheet | undefined;
}

export interface FileSummary {
  name: string;
  bytes: number;
  /** Lines in the file that are not blank, the header included. */
  lines: number;
  readings: number;
  separator: 'comma' | 'semicolon' | 'tab';
  decimalComma: boolean;
  jobs: number;
  rounds: number;
  setups: number;
  /** In alphabetical order, as are gauges and sheets. */
  technicians: string[];
  gauges: string[];
  sheets: string[];
  /** Times of the first and last reading, epoch ms; null where there is none. */
  from: number | null;
  to: number | null;
  /** Columns that were not read. */
  ignoredColumns: string[];
  /** Sentences a person should see although nothing is at fault. */
  notes: string[];
}

/** What a measurement file holds. Where there is any fault, `readings` is empty: nothing is half read. */
export interface MeasurementFile {
  readings: Reading[];
  faults: Fault[];
  summary: FileSummary;
}

/** Where the bytes of a file come from: all at once, or in chunks. */
export type FileSource = string | Uint8Array | Iterable<Uint8Array> | AsyncIterable<Uint8Array>;

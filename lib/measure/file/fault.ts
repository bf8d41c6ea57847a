/** One reason why a measurement file is refused. */
export interface Fault {
  /** 1-based line in the file (the header is line 1); null where the file as a whole is at fault. */
  line: number | null;
  /** The column at fault, by its name in the measurement file; null where the line or file as a whole is. */
  column: string | null;
  /** A sentence: what is wrong, and how to mend it. */
  message: string;
  /** The field as found, or null. */
  value: string | null;
}

/** The most faults that a list for reading prints; the data keep all of them. */
export const LISTED_FAULTS = 100;

/** `Line 5, column value_mm: …` */
export function faultSentence(fault: Fault): string {
  const place = [
    fault.line === null ? '' : `line ${fault.line}`,
    fault.column === null ? '' : `column ${fault.column}`,
  ]
    .filter((part) => part !== '')
    .join(', ');
  return place === '' ? fault.message : `${place.charAt(0).toUpperCase()}${place.slice(1)}: ${fault.message}`;
}

/** The faults as lines of text, at most `limit` of them, with a count of those left out. */
export function faultList(faults: readonly Fault[], limit = LISTED_FAULTS): string[] {
  const listed = faults.slice(0, limit).map(faultSentence);
  const left = faults.length - listed.length;
  return left > 0 ? [...listed, `… and ${left} more faults.`] : listed;
}

/** The fields of a line of a measurement file by column. */
export type Fields = Partial<Record<keyof typeof HEIGHT, string>>;

const HEIGHT = {
  job: 'J1',
  sheet: 'S1',
  stage: 'before',
  attempt: '1',
  taken_at: '2025-01-06T07:31:00Z',
  technician: 'T1',
  gauge: 'C1',
  gauge_kind: 'centering',
  setup: '1',
  quantity: 'height',
  point: 'A',
  side: 'L',
  section: 'center',
  station_mm: '1000',
  zero: 'yes',
  nominal_mm: '200',
  tolerance_mm: '3',
  clearance_mm: '100',
  repeat: '1',
  value_mm: '300.5',
  cause: '',
};

export const COLUMNS = Object.keys(HEIGHT).join(',');

/** A line of the file that is sound by itself: the height of zero point A, with some fields changed. */
export function height(changed: Fields = {}): string {
  return Object.values({ ...HEIGHT, ...changed }).join(',');
}

export function length(changed: Fields = {}): string {
  return height({
    quantity: 'length',
    point: 'K-N',
    side: '',
    station_mm: '',
    zero: '',
    clearance_mm: '',
    gauge: 'M1',
    gauge_kind: 'tram',
    setup: 'length',
    nominal_mm: '1310',
    value_mm: '1308',
    ...changed,
  });
}

/** Both zero stations and one more, each in its own setup: a round without a fault. */
export const ROUND = [
  height(),
  height({ setup: '2', gauge: 'C2', point: 'B', station_mm: '2500' }),
  height({ setup: '3', gauge: 'C3', point: 'C', station_mm: '0', section: 'front', zero: 'no' }),
] as const;

/** A file of these lines; the first of them is line 2. */
export function file(lines: readonly string[], header = COLUMNS): string {
  return `${[header, ...lines].join('\n')}\n`;
}

/** A file of a sound round and these lines; the first of them is line 5. */
export function after(...lines: string[]): string {
  return file([...ROUND, ...lines]);
}

const HEADER =
  'job,sheet,stage,attempt,taken_at,technician,gauge,gauge_kind,setup,quantity,point,side,section,station_mm,zero,nominal_mm,tolerance_mm,clearance_mm,value_mm';

/** Four stations of an invented sheet: letter, section, place along the vehicle, zero station, sheet height. */
const STATIONS = [
  ['ZA', 'center', 1100, 'yes', 200],
  ['ZB', 'center', 2600, 'yes', 180],
  ['F', 'front', 300, 'no', 250],
  ['R', 'rear', 3600, 'no', 300],
] as const;

/** By whom and with which gauges, numbered from 1, nobody else has measured. */
const SOMEBODY_NEW = { technician: 'TST', gauges: 'E2E-C' };

/**
 * By a hand and gauges of the demo shop, as a round of every day: of somebody new it would be learned anew, which
 * takes a processor half a minute.
 */
export const OF_THE_DEMO_SHOP = { technician: 'FEL', gauges: 'CG' };

/** A small measurement file: one round of one job, every height 0.5 mm above the sheet. */
export function measurementFile({
  job,
  by = SOMEBODY_NEW,
}: {
  job: string;
  by?: typeof SOMEBODY_NEW;
}): string {
  const lines = STATIONS.flatMap(([point, section, station, zero, nominal], index) =>
    ['L', 'R'].map((side, second) =>
      [
        job,
        'E2E-S1',
        'before',
        1,
        `2025-03-03T08:${10 + index}:0${second}+00:00`,
        by.technician,
        `${by.gauges}${index + 1}`,
        'centering',
        `B1-0${index + 1}`,
        'height',
        point,
        side,
        section,
        station,
        zero,
        nominal,
        3,
        100,
        `${nominal + 100}.5`,
      ].join(','),
    ),
  );
  return `${[HEADER, ...lines].join('\n')}\n`;
}

/** A file as the browser's chooser hands it over. */
export function fileOf(name: string, content: string | Buffer) {
  return { name, mimeType: 'text/csv', buffer: Buffer.from(content as string) };
}

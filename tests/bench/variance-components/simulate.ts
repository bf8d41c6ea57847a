import { seededNormal, seededUniform } from '../../property/stats/seeded-normal';

/** Readings ~ dimension + technician + gauge + setup, as columns. */
export interface SimulatedReadings {
  readings: number;
  setups: number;
  value: Float64Array;
  /** Of each reading. */
  setup: Int32Array;
  /** Of each setup. */
  dimension: Int32Array;
  technician: Int32Array;
  gauge: Int32Array;
}

export interface SimulatedSize {
  readings: number;
  technicians: number;
  gauges: number;
}

/** Three readings a setup on average, never fewer than one; ten setups a dimension; all sds in millimetres. */
export function simulateReadings(
  { readings, technicians, gauges }: SimulatedSize,
  seed = 1,
): SimulatedReadings {
  const uniform = seededUniform(seed);
  const normal = seededNormal(uniform);
  const pick = (count: number) => Math.floor(uniform() * count);
  const draw = (count: number, sd: number) => Float64Array.from({ length: count }, () => sd * normal());
  const setups = Math.ceil(readings / 3);
  const dimensions = Math.ceil(setups / 10);
  const level = {
    dimension: draw(dimensions, 2),
    technician: draw(technicians, 0.5),
    gauge: draw(gauges, 0.3),
    setup: draw(setups, 1.2),
  };
  const dimension = Int32Array.from({ length: setups }, () => pick(dimensions));
  const technician = Int32Array.from({ length: setups }, () => pick(technicians));
  const gauge = Int32Array.from({ length: setups }, () => pick(gauges));
  const setup = Int32Array.from({ length: readings }, (_, i) => (i < setups ? i : pick(setups))).sort();
  const at = (values: Float64Array, i: number | undefined) => values[i ?? 0] ?? 0;
  const value = Float64Array.from(setup, (s) => {
    const mean =
      at(level.dimension, dimension[s]) + at(level.technician, technician[s]) + at(level.gauge, gauge[s]);
    return mean + at(level.setup, s) + 0.4 * normal();
  });
  return { readings, setups, value, setup, dimension, technician, gauge };
}

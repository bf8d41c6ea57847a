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
  const draw = (count: number, sd: number) => {
    const effects = new Float64Array(count);
    for (let i = 0; i < count; i++) effects[i] = sd * normal();
    return effects;
  };
  const setups = Math.ceil(readings / 3);
  const dimensions = Math.ceil(setups / 10);
  const level = {
    dimension: draw(dimensions, 2),
    technician: draw(technicians, 0.5),
    gauge: draw(gauges, 0.3),
    setup: draw(setups, 1.2),
  };
  // Plain loops: the garbage of Array.from over a million readings would count as memory of the fit.
  const choose = (count: number) => {
    const codes = new Int32Array(setups);
    for (let s = 0; s < setups; s++) codes[s] = pick(count);
    return codes;
  };
  const dimension = choose(dimensions);
  const technician = choose(technicians);
  const gauge = choose(gauges);
  const setup = new Int32Array(readings);
  for (let i = 0; i < readings; i++) setup[i] = i < setups ? i : pick(setups);
  setup.sort();
  const value = new Float64Array(readings);
  const at = (values: Float64Array, i: number | undefined) => values[i ?? 0] ?? 0;
  for (let i = 0; i < readings; i++) {
    const s = setup[i] ?? 0;
    value[i] =
      at(level.dimension, dimension[s]) +
      at(level.technician, technician[s]) +
      at(level.gauge, gauge[s]) +
      at(level.setup, s) +
      0.4 * normal();
  }
  return { readings, setups, value, setup, dimension, technician, gauge };
}

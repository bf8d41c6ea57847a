import { collapseByCode } from '@/lib/stats/collapse';
import { simulateReadings } from './simulate';

/** The collapse pass in a fresh process: the first call, and the middle one of eleven. */
const [readings = 1_000_000] = process.argv.slice(2).map(Number);
const { value, setup, setups } = simulateReadings({ readings, technicians: 12, gauges: 20 });
const times = Array.from({ length: 11 }, () => {
  const before = performance.now();
  collapseByCode(value, setup, setups);
  return performance.now() - before;
});
const [first = NaN] = times;
console.log(JSON.stringify({ first, middle: [...times].sort((a, b) => a - b)[5] }));

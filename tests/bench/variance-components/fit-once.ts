import { collapseByCode } from '@/lib/stats/collapse';
import { fitCollapsedVarianceComponents } from '@/lib/stats/variance-components';
import { simulateReadings } from './simulate';

/** One fit in a fresh process, from readings in memory to the result; prints figures as JSON. */
const [readings = 100_000, technicians = 12, gauges = 20] = process.argv.slice(2).map(Number);
const { value, setup, setups, dimension, technician, gauge } = simulateReadings({
  readings,
  technicians,
  gauges,
});
const before = performance.now();
const { n, mean, ss } = collapseByCode(value, setup, setups);
const collapsed = performance.now();
const fit = fitCollapsedVarianceComponents({
  n,
  mean,
  ss,
  random: { dimension, technician, gauge },
  intervals: 'none',
});
const done = performance.now();
console.log(
  JSON.stringify({
    collapse: collapsed - before,
    total: done - before,
    megabytes: process.resourceUsage().maxRSS / 1000,
    criterion: fit.criterion,
    sds: Object.fromEntries([
      ...fit.components.map(({ name, sd }): [string, number | null] => [name, sd]),
      ['residual', fit.residual.sd],
    ]),
  }),
);

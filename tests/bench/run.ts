import { describeMachine } from './machine';
import { benchVarianceComponents } from './variance-components/bench';

/**
 * `npm run bench [-- --long]`: our figures side by side with the peers that are installed, as ratios, in one run.
 * Every fit is a fresh process with loading left out. A ratio belongs to the machine and the load it was taken on.
 */
const say = (line: string) => {
  console.log(line);
};

say(describeMachine());
await benchVarianceComponents(say, process.argv.includes('--long'));

export { learn, type LearnOptions } from './learn';

export { cochran, cochranCritical } from './cochran';
export { grubbs, grubbsCritical, type GrubbsSides } from './grubbs';
export { mandel, mandelHCritical, mandelKCritical, type Consistency } from './mandel';
export type { Outlier } from './outlier';

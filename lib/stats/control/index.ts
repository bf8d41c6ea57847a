export { averageRunLength, type ChartDesign } from './average-run-length';
export { controlConstants, type ControlConstants } from './control-constants';
export { cusum, type CusumAlarm, type CusumChart, type CusumOptions } from './cusum';
export { cusumLimitFor, ewmaLimitFor } from './design-limits';
export { ewma, type EwmaChart, type EwmaOptions } from './ewma';
export { individuals, type IndividualsChart } from './individuals';

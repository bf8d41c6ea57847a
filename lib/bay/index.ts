/**
 * A round that is measured beside the car: what was entered, what it comes to, and what to do next. Plain functions
 * that the device and the shop share; a component of the browser does not import `entry-schema`.
 */
export * from './aim';
export * from './at-place';
export * from './entry';
export * from './fitting';
export * from './hidden';
export * from './new-entry';
export * from './next';
export * from './plan';
export * from './readings';
export * from './record';
export * from './targets';
export * from './typed';
export * from './types';

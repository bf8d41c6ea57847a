/** Gauges held against a reference length or a check standard: may it hang, does it drift, did it step. */
export { againstReference, type Reference } from './against-reference';
export type { Call, CalledVerification, GaugeEvent, GaugeVerdict, Verification } from './types';
export { verifyGauge, type VerifyOptions } from './verify-gauge';

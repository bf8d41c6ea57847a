import type { GaugeKind } from '@/lib/measure';

export type ShopId = number;

export interface Shop {
  id: ShopId;
  name: string;
  /** IANA name; readings without an offset are in this zone, and months are counted in it. */
  timeZone: string;
  /** Where a sheet states none, mm. */
  defaultTolerance: number;
  /** Grows by one with every change of the measurements; a fit names the version it was made from. */
  inputsVersion: number;
  /** The invented shop, whose sign-in names and passwords are public. */
  demo: boolean;
  /** What missing damage costs, as a multiple of a needless re-hang; null where nobody has set it. */
  missCost: number | null;
}

export const ROLES = ['technician', 'trainer', 'manager'] as const;
export type Role = (typeof ROLES)[number];

export interface Person {
  /** Unique within the shop; the `technician` of a measurement file. */
  code: string;
  name: string;
  role: Role;
  active: boolean;
}

export const GAUGE_STATES = ['in-service', 'out-of-service', 'retired'] as const;
export type GaugeState = (typeof GAUGE_STATES)[number];

export interface Gauge {
  /** Asset tag, unique within the shop. */
  tag: string;
  kind: GaugeKind | null;
  /** Length from the pointer's tip to the fixed mark, mm. */
  fixedMark: number | null;
  state: GaugeState;
  verifiedAt: number | null;
}

/** What a gauge was held against; that it was only looked at, or only reported to have fallen. */
export const VERIFICATION_KINDS = [
  'reference-length',
  'check-standard',
  'looked-at',
  'reported-dropped',
] as const;
export type VerificationKind = (typeof VERIFICATION_KINDS)[number];

export interface GaugeVerification {
  gauge: string;
  at: number;
  kind: VerificationKind;
  /** Length of the reference or value of the check standard, mm. */
  reference: number | null;
  /** Standard uncertainty of the error found, that of the reference within, mm. */
  uncertainty: number | null;
  /** Error found, mm; null where only the state was judged. */
  error: number | null;
  passed: boolean;
  /** Person's code. */
  by: string | null;
  note: string | null;
}

/** A verification to keep. */
export interface NewVerification
  extends
    Omit<GaugeVerification, 'kind' | 'reference' | 'uncertainty'>,
    Partial<Pick<GaugeVerification, 'kind' | 'reference' | 'uncertainty'>> {
  /** False where the error found says neither that it passes nor that it fails: then the state stays as it was. */
  decides?: boolean;
}

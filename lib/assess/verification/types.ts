/** A gauge held against a reference length or a check standard. */
export interface Verification {
  /** Epoch ms. */
  at: number;
  /** What the gauge showed less the reference, mm, and the standard uncertainty of that. */
  error: number;
  uncertainty: number;
}

/** What happened to a gauge beside its verifications. */
export interface GaugeEvent {
  at: number;
  /** `dropped` stands for everything that puts its figures in doubt; `adjusted` for everything that changes them. */
  kind: 'dropped' | 'adjusted';
}

export type Call = 'pass' | 'fail' | 'undecided';

export interface CalledVerification extends Verification {
  /** P(the gauge's true error is within the limit), given this verification alone. */
  within: number;
  call: Call;
}

export interface Estimated {
  value: number | null;
  low: number | null;
  high: number | null;
  p: number | null;
  why: string | null;
}

export interface GaugeVerdict {
  gauge: string;
  state: 'in service' | 'out of service' | 'not verified';
  /** Why, and what to do. */
  sentence: string;
  /** In the order of time. */
  verifications: CalledVerification[];
  /** Since the gauge was last adjusted; a chart across an adjustment would show that, not the gauge. */
  chart: {
    at: number[];
    errors: number[];
    center: number | null;
    low: number | null;
    high: number | null;
    /** EWMA of the errors with its limits. */
    ewma: { statistic: number[]; low: number[]; high: number[] } | null;
    /** Times at which either chart is beyond its limits. */
    alarms: number[];
    why: string | null;
  };
  /** mm in 100 days, since the last adjustment. */
  drift: Estimated;
  /** The likeliest single step since the last adjustment: its size, and the first verification after it. */
  step: Estimated & { at: number | null; from: number | null; to: number | null };
  notes: string[];
}

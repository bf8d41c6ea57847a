import { at } from '@/lib/stats/linear-algebra/element';
import { minimise, type Minimum, type Objective } from './minimise';

/** Limits of a variance; null where the criterion sets none. */
export interface VarianceLimits {
  low: number;
  high: number | null;
}

/** Thrown where a profile runs into a lower criterion than the fit: the fit starts again from there. */
export class LowerMinimum extends Error {
  constructor(readonly x: Float64Array) {
    super('The profile is lower than the fit.');
  }
}

/**
 * Profile-likelihood limits of variance j: all values at which the criterion, minimised over the other variances,
 * is at most `cut` above its minimum. By root finding on the signed root of the profile, which is nearly linear in
 * the logarithm of the variance; no spline is drawn through it.
 *
 * The lower limit is 0 where the profile at 0 is not above the cut.
 * Source: Venzon & Moolgavkar (1988), Applied Statistics 37, 87–94; Bates et al. (2015), section 5.1.
 */
export function profileLimits(
  objective: Objective,
  fit: Minimum,
  j: number,
  cut: number,
  thorough: boolean,
): VarianceLimits {
  const profile = new Profile(objective, fit, j, cut, thorough);
  const bound = at(objective.lower, j);
  const estimate = at(fit.x, j);
  const high = profile.upper();
  if (estimate <= bound) return { low: 0, high };
  // The residual's bound is no place to look at: the equations there are as good as singular.
  const reachesZero = bound === 0 && profile.atZero() <= 0;
  return { low: reachesZero ? 0 : profile.lower(bound), high };
}

interface ProfilePoint {
  /** Square root of the rise above the minimum, less the root of the cut. */
  excess: number;
  /** Its slope in the logarithm of the variance. */
  slope: number;
}

class Profile {
  /** Where the other variances stood last: the start of the next minimum. */
  private warm: Float64Array;
  /** Try the fit itself as a start as well; set once the warm start was found to miss a minimum. */
  private everyStart = false;

  constructor(
    private readonly objective: Objective,
    private readonly fit: Minimum,
    private readonly j: number,
    private readonly cut: number,
    /** Look for minima that the warm starts miss. */
    private readonly thorough: boolean,
  ) {
    this.warm = fit.x;
  }

  at(variance: number): ProfilePoint {
    let found = this.minimum(variance, this.warm);
    if (this.everyStart && this.warm !== this.fit.x) {
      const other = this.minimum(variance, this.fit.x);
      if (other.value < found.value) found = other;
    }
    const rise = found.value - this.fit.value;
    if (rise < -1e-7 - 10 * this.objective.noise(found.x)) throw new LowerMinimum(found.x);
    this.warm = found.x;
    const root = Math.sqrt(Math.max(rise, 0));
    const slope = root > 0 ? (variance * at(found.gradient, this.j)) / (2 * root) : 0;
    return { excess: root - Math.sqrt(this.cut), slope };
  }

  /** The excess at a variance of 0, from every start. */
  atZero(): number {
    const before = this.everyStart;
    this.everyStart = this.thorough;
    const { excess } = this.at(0);
    this.everyStart = before;
    return excess;
  }

  private minimum(variance: number, from: Float64Array): Minimum {
    const start = from.slice();
    start[this.j] = variance;
    return minimise(this.objective, start, { held: this.j, enough: 1e-11 });
  }

  upper(): number | null {
    const estimate = at(this.fit.x, this.j);
    const spread = this.spread();
    this.warm = this.fit.x;
    const first =
      estimate > at(this.objective.lower, this.j) ? Math.log(estimate) + spread : Math.log(this.fromZero());
    return this.limit(first, estimate > 0 ? Math.log(estimate) : -Infinity, Infinity, 1);
  }

  lower(bound: number): number {
    const estimate = Math.log(at(this.fit.x, this.j));
    this.warm = this.fit.x;
    const least = bound > 0 ? Math.log(bound) + 3 : -Infinity;
    return this.limit(estimate - this.spread(), -Infinity, estimate, -1, least) ?? 0;
  }

  /** The root, found again with every start where the profile has a lower minimum there than the warm start led to. */
  private limit(first: number, below: number, above: number, side: 1 | -1, least = -Infinity): number | null {
    const found = this.root(first, below, above, side, least);
    if (found === null || !this.thorough) return found;
    const missed = this.fit.value + this.cut - this.minimum(found, this.fit.x).value;
    if (missed < 1e-7) return found;
    this.everyStart = true;
    return this.root(Math.log(found), below, above, side, least);
  }

  /** Half width of the interval of the logarithm as the curvature at the minimum has it, within reason. */
  private spread(): number {
    const curvature = (this.fit.curvature[this.j]?.[this.j] ?? 0) * at(this.fit.x, this.j) ** 2;
    return Math.min(2, Math.max(1e-4, Math.sqrt((2 * this.cut) / Math.max(curvature, 1e-9))));
  }

  /** A first upper limit for a variance estimated as 0: where its slope at 0 would reach the cut. */
  private fromZero(): number {
    const slope = at(this.fit.gradient, this.j);
    return Math.min(10, Math.max(1e-8, this.cut / Math.max(slope, 1e-9)));
  }

  /** Newton steps on the logarithm of the variance, kept between `below` and `above`. `side` is 1 for an upper limit. */
  private root(
    first: number,
    below: number,
    above: number,
    side: 1 | -1,
    leastLog = -Infinity,
  ): number | null {
    let [low, high] = [below, above];
    let u = first;
    for (let i = 0; i < 80; i++) {
      const { excess, slope } = this.at(Math.exp(u));
      if (Math.abs(excess) < 1e-9) return Math.exp(u);
      if (excess * side > 0) high = u;
      else low = u;
      if (u > 60 || (side < 0 && u < leastLog)) return null;
      const newton = slope * side > 0 ? -excess / slope : -Math.sign(excess) * side * 2;
      let next = u + Math.max(-2.5, Math.min(2.5, newton));
      if (!(next > low && next < high)) {
        next = Number.isFinite(low) && Number.isFinite(high) ? (low + high) / 2 : u + (next > u ? 1 : -1);
      }
      if (Math.abs(next - u) < 1e-9) return Math.exp(next);
      u = next;
    }
    return Math.exp(u);
  }
}

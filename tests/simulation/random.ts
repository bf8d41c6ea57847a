/** Seeded pseudo-random numbers: mulberry32 for the uniform, Box–Muller for the normal. */
export class Random {
  private state: number;
  constructor(seed: number) {
    this.state = seed >>> 0;
  }
  uniform(low = 0, high = 1): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return low + (high - low) * (((t ^ (t >>> 14)) >>> 0) / 4294967296);
  }
  normal(mean = 0, sd = 1): number {
    const u = Math.max(this.uniform(), 1e-300);
    return mean + sd * Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * this.uniform());
  }
  /** Student's t with variance one. */
  heavy(df: number): number {
    let chi = 0;
    for (let i = 0; i < df; i++) chi += this.normal() ** 2;
    return (this.normal() / Math.sqrt(chi / df)) * Math.sqrt((df - 2) / df);
  }
  chance(p: number): boolean {
    return this.uniform() < p;
  }
  pick<T>(items: readonly T[]): T {
    const item = items[Math.floor(this.uniform() * items.length)];
    if (item === undefined) throw new RangeError('There is nothing to pick from.');
    return item;
  }
  weighted(weights: readonly number[]): number {
    let left = this.uniform() * weights.reduce((a, b) => a + b, 0);
    for (let i = 0; i < weights.length; i++) {
      left -= weights[i] ?? 0;
      if (left < 0) return i;
    }
    return weights.length - 1;
  }
}

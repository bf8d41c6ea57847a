import { describe, expect, it } from 'vitest';
import {
  bodyPrior,
  dimensionRisks,
  guardBand,
  jobRisk,
  shopRisk,
  type BodyPrior,
  type FinalDimension,
  type FinalJob,
} from '@/lib/assess/measuring-risk';
import { decisionRisks, normalCdf } from '@/lib/stats';
import { Random } from '@/tests/simulation/random';

const PRIOR: BodyPrior = {
  scatter: 0.9,
  flatScatter: 0.9,
  offShare: 0.06,
  offScatter: 7,
  dimensions: 1000,
  why: null,
};

/** A shop by the model: bodies, one datum per side and job (front and rear error), settings, mis-sets, readings. */
function simulated(jobs: number, seed: number) {
  const random = new Random(seed);
  return Array.from({ length: jobs }, (_, j) => {
    const datum = new Map(['a L', 'b L', 'a R', 'b R'].map((key) => [key, random.normal()]));
    let trulyRight = true;
    const dimensions = Array.from({ length: 12 }, (__, i): FinalDimension => {
      const side = i % 2 === 0 ? 'L' : 'R';
      const lever = -0.6 + 0.4 * Math.floor(i / 2);
      const shared = [
        { key: `a ${side}`, mm: -0.7 * (1 - lever) },
        { key: `b ${side}`, mm: -0.7 * lever },
      ];
      const off = random.chance(PRIOR.offShare);
      const body = random.normal(0, off ? PRIOR.offScatter : PRIOR.scatter);
      const wrong = random.chance(0.04);
      const error =
        random.normal(0, 0.8) +
        (wrong ? random.normal(0, 8) : 0) +
        shared.reduce((sum, { key, mm }) => sum + mm * (datum.get(key) ?? 0), 0);
      const deviation = body + error;
      if (Math.abs(body) > 3) trulyRight = false;
      return {
        ...{
          name: `height ${i}`,
          quantity: 'height',
          technician: 'T1',
          gauge: 'C1',
          deviation,
          tolerance: 3,
        },
        ...{
          within: Math.abs(deviation) <= 3,
          known: 0,
          own: 0.8,
          shared,
          datum: [],
          missets: [{ chance: 0.04, sd: 8 }],
        },
      };
    });
    const right = dimensions.every(({ within }) => within);
    const job: FinalJob = { job: `J${j}`, right, again: !right, dimensions };
    return { job, trulyRight };
  });
}

/** P(all of one side truly within) on a grid of its two datum errors, 0.2 sd apart. */
function onGrid(job: FinalJob, side: string): number {
  const dimensions = job.dimensions.filter(({ shared }) => shared[0]?.key === `a ${side}`);
  let [weights, right] = [0, 0];
  for (let a = -5; a <= 5; a += 0.2) {
    for (let b = -5; b <= 5; b += 0.2) {
      let weight = Math.exp(-(a * a + b * b) / 2);
      let all = 1;
      for (const { deviation, shared } of dimensions) {
        const y = deviation - (shared[0]?.mm ?? 0) * a - (shared[1]?.mm ?? 0) * b;
        let [density, inside] = [0, 0];
        for (const [share, body] of [
          [0.94, 0.81],
          [0.06, 49],
        ] as const) {
          for (const [chance, noise] of [
            [0.96, 0.64],
            [0.04, 64.64],
          ] as const) {
            const total = body + noise;
            const w = (share * chance * Math.exp((-y * y) / (2 * total))) / Math.sqrt(total);
            const sd = Math.sqrt((body * noise) / total);
            density += w;
            inside +=
              w * (normalCdf((3 - (body / total) * y) / sd) - normalCdf((-3 - (body / total) * y) / sd));
          }
        }
        weight *= density;
        all *= inside / density;
      }
      weights += weight;
      right += weight * all;
    }
  }
  return right / weights;
}

describe('the probability that a job is truly right', () => {
  it('is what integrating over a fine grid of both datum errors gives, to 0.005', () => {
    for (const { job } of simulated(8, 5)) {
      // The sides share nothing, so the probability is a product of two, each over its own datum.
      const expected = ['L', 'R'].reduce((product, side) => product * onGrid(job, side), 1);
      expect(Math.abs(jobRisk(job, PRIOR).trulyRight - expected), job.job).toBeLessThan(0.005);
    }
  });

  it('is calibrated on 320 simulated jobs: of those given a share, about that share is right', () => {
    const shop = simulated(320, 11);
    const risks = shop.map(({ job, trulyRight }) => ({ p: jobRisk(job, PRIOR).trulyRight, trulyRight }));
    for (const [low, high] of [
      [0, 0.2],
      [0.2, 0.8],
      [0.8, 0.95],
      [0.95, 1],
    ] as const) {
      const here = risks.filter(({ p }) => p >= low && p < high);
      const expected = here.reduce((sum, { p }) => sum + p, 0);
      const sd = Math.sqrt(here.reduce((sum, { p }) => sum + p * (1 - p), 0));
      const seen = here.filter(({ trulyRight }) => trulyRight).length;
      expect(here.length, `${low}`).toBeGreaterThan(15);
      expect(Math.abs(seen - expected) / sd, `${low} to ${high}: ${seen} of ${expected}`).toBeLessThan(2.6);
    }
  });

  it('counts a datum error once: taking the heights as independent would expect another number of right jobs', () => {
    const shop = simulated(80, 21);
    const shared = shop.reduce((sum, { job }) => sum + jobRisk(job, PRIOR).trulyRight, 0);
    const alone = shop.reduce((sum, { job }) => {
      const dimensions = job.dimensions.map((one) => ({
        ...one,
        own: Math.hypot(one.own, ...one.shared.map(({ mm }) => mm)),
        shared: [],
      }));
      return sum + jobRisk({ ...job, dimensions }, PRIOR).trulyRight;
    }, 0);
    const truth = shop.filter(({ trulyRight }) => trulyRight).length;
    expect(Math.abs(shared - truth)).toBeLessThan(Math.abs(alone - truth));
  });

  it('learns the prior and then says how many calls were wrong, within its limits', () => {
    const shop = simulated(120, 31);
    const prior = bodyPrior(shop.flatMap(({ job }) => job.dimensions));
    expect(Math.abs(Math.log(prior.scatter / PRIOR.scatter))).toBeLessThan(0.15);
    expect(Math.abs(prior.offShare - PRIOR.offShare)).toBeLessThan(0.02);
    const risk = shopRisk(shop.map(({ job }) => job));
    const wronglyRight = shop.filter(({ job, trulyRight }) => job.right && !trulyRight).length;
    const wronglyNotRight = shop.filter(({ job, trulyRight }) => !job.right && trulyRight).length;
    expect(wronglyRight).toBeGreaterThanOrEqual(risk.wronglyRight.low ?? NaN);
    expect(wronglyRight).toBeLessThanOrEqual(risk.wronglyRight.high ?? NaN);
    expect(wronglyNotRight).toBeGreaterThanOrEqual(risk.wronglyNotRight.low ?? NaN);
    expect(wronglyNotRight).toBeLessThanOrEqual(risk.wronglyNotRight.high ?? NaN);
  });
});

describe('risks of a dimension', () => {
  it('without a mixture are those of JCGM 106:2012', () => {
    const prior = { ...PRIOR, offShare: 0 };
    const plain = decisionRisks({ processMean: 0, processSd: 0.9, uncertainty: 0.7, lower: -3, upper: 3 });
    const found = dimensionRisks({ tolerance: 3, uncertainty: 0.7, prior });
    expect(found.consumer).toBeCloseTo(plain.consumer, 12);
    expect(found.producer).toBeCloseTo(plain.producer, 12);
  });

  it('a guard band meets the risk that is wanted, to a hundredth of a millimetre, and costs rejections', () => {
    const question = { tolerance: 3, uncertainty: 1, prior: PRIOR };
    const { guard, risks, without } = guardBand(question, 0.001);
    expect(guard).toBeGreaterThan(0);
    expect(risks?.outGivenAccepted).toBeLessThanOrEqual(0.001);
    const looser = dimensionRisks({ ...question, guard: (guard ?? NaN) - 0.01 });
    expect(looser.outGivenAccepted).toBeGreaterThan(0.001);
    expect(risks?.producer).toBeGreaterThan(without.producer);
    expect(guardBand(question, 0.5).guard).toBe(0);
    expect(guardBand({ ...question, uncertainty: 6 }, 1e-4)).toMatchObject({ guard: null, risks: null });
  });
});

import { describe, expect, it } from 'vitest';
import { bodyPrior, finalJob, jobRisk } from '@/lib/assess/measuring-risk';
import { knownShop } from '@/tests/simulation/known';
import { simulateShop } from '@/tests/simulation/shop';

describe('P(truly within) on a simulated shop with damage, mis-sets, slips and zero gauges set wrong', () => {
  const learned = knownShop();
  const { jobs, truth } = simulateShop({ seed: 12, jobs: 110 });
  const finals = jobs.flatMap((job) => finalJob(job, learned) ?? []);
  const prior = bodyPrior(finals.flatMap(({ dimensions }) => dimensions));
  const heights = finals.flatMap((final) => {
    const round = jobs
      .find(({ job }) => job === final.job)
      ?.rounds.find(({ stage, attempt }) => stage === 'after' && attempt === 1);
    const within = new Map<string, boolean>();
    for (const setup of round?.setups ?? []) {
      for (const { quantity, point, side, tolerance } of setup.observations) {
        const known = truth.get(`${final.job} after 1 ${setup.label} ${side ?? ''}`);
        if (quantity !== 'height' || known === undefined) continue;
        within.set(`height ${point} ${side ?? ''}`, Math.abs(known.body) <= tolerance);
      }
    }
    return jobRisk(final, prior).dimensions.flatMap(({ name, trulyWithin }) => {
      const truly = within.get(name);
      return truly === undefined ? [] : [{ p: trulyWithin, truly }];
    });
  });

  it('learns what repairs leave, 0.8 mm there, to a third, though it knows the hands only on average', () => {
    expect(Math.abs(Math.log(prior.scatter / 0.8))).toBeLessThan(1 / 3);
  });

  it.each([
    [0.8, 0.97, 0.05],
    [0.97, 1.01, 0.02],
  ])('of heights given %f to %f about that share is within', (low, high, tolerance) => {
    const here = heights.filter(({ p }) => p >= low && p < high);
    const said = here.reduce((sum, { p }) => sum + p, 0) / here.length;
    const seen = here.filter(({ truly }) => truly).length / here.length;
    expect(here.length).toBeGreaterThan(100);
    expect(Math.abs(said - seen), `${said} said, ${seen} seen of ${here.length}`).toBeLessThan(tolerance);
  });

  it('is too low below a half, since a zero gauge set wrong passes for damage: the careful side', () => {
    const here = heights.filter(({ p }) => p < 0.5);
    const said = here.reduce((sum, { p }) => sum + p, 0) / here.length;
    const seen = here.filter(({ truly }) => truly).length / here.length;
    expect(here.length).toBeGreaterThan(10);
    expect(seen).toBeGreaterThan(said);
  });
});

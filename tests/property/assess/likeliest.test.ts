import { describe, expect, it } from 'vitest';
import { learn, type Learned } from '@/lib/assess';
import { type Pass, partsOfPass, sumOfParts, tallyPart } from '@/lib/assess/learn';
import { update } from '@/lib/assess/learn/update';
import type { Job } from '@/lib/measure/types';
import { simulateShop } from '@/tests/simulation/shop';

const shop = simulateShop({ seed: 5, jobs: 90, technicians: 4 });
const effort = { depth: 7, breadth: 150, share: 0.995, byKind: { alone: 4.5, together: 6 } };

/** So many passes more over all rounds. */
function further(jobs: readonly Job[], from: Learned, passes: number): Learned {
  let learned = from;
  for (let i = 0; i < passes; i++) {
    const pass: Pass = { rounds: jobs.flatMap(({ rounds }) => rounds), learned, effort };
    learned = update(learned, sumOfParts(pass, partsOfPass(pass).map(tallyPart)));
  }
  return learned;
}

describe('what is learned', () => {
  it('is where many passes more would lead, to a quarter of a standard error', () => {
    const learned = learn(shop.jobs);
    const led = further(shop.jobs, learned, 8);
    const technicians = Object.entries(learned.technicians);
    expect(technicians.length).toBe(4);
    for (const [name, hand] of technicians) {
      const other = led.technicians[name];
      const moved = Math.abs(Math.log(hand.setting / (other?.setting ?? Number.NaN)));
      expect(moved / hand.settingLogSe, `setting of ${name}`).toBeLessThan(0.25);
      const bias = Math.abs(hand.bias - (other?.bias ?? Number.NaN));
      expect(bias / hand.biasSe, `bias of ${name}`).toBeLessThan(0.25);
    }
    for (const [name, gauge] of Object.entries(learned.gauges)) {
      const moved = Math.abs(gauge.bias - (led.gauges[name]?.bias ?? Number.NaN));
      expect(moved / gauge.biasSe, `bias of ${name}`).toBeLessThan(0.25);
    }
  });
});

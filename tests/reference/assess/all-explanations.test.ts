import { describe, expect, it } from 'vitest';
import { classProbabilities } from '@/lib/assess/cause/classes';
import { type Component, bodyComponents, settingComponents } from '@/lib/assess/cause/components';
import { frameRound, type RoundFrame } from '@/lib/assess/cause/frame';
import { judgeRound } from '@/lib/assess/cause/judge';
import type { Learned } from '@/lib/assess/cause/learned';
import { lengthEvidence } from '@/lib/assess/cause/lengths';
import { gaugeOf, handOf, modelRound } from '@/lib/assess/cause/model';
import { search } from '@/lib/assess/cause/search';
import { slipsOf } from '@/lib/assess/cause/slips';
import { knownShop, sparse } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import { expectAbsolute } from '../stats/closeness';
import { Joint, type Terms } from './gaussian';

/*
 * Three stations, the front gauge hung twice, one length between the front and a zero point: few enough
 * explanations to write every one out, each as one multivariate normal density times its prior.
 */
const X = { a: 1100, b: 2600, front: 300 };
const round = roundOf({
  clearance: 50,
  hung: [
    { at: X.a, zero: true, left: 0.1, right: 0 },
    { at: X.b, zero: true, left: 0, right: 0 },
    { at: X.front, left: 7.1, right: 1.4, n: [2, 1] },
    { at: X.front, left: 4.2, right: 0.9, n: [1, 2], gauge: 'G3' },
  ],
  lengths: [{ point: 'A-C', deviation: 4.1, n: 2 }],
});
const learned = sparse(
  knownShop({ technicians: { T1: { bias: 0.2, biasSe: 0.1 } }, gauges: { G3: { bias: -0.3 } } }),
);
const frame = framed();

function framed(): RoundFrame {
  const found = frameRound(round);
  if ('why' in found) throw new Error(found.why);
  return found;
}

interface Case {
  bodies: [Component, Component, Component];
  zeros: [Component, Component];
  settings: [Component, Component];
}

/** Every explanation: at the zero stations nothing wrong, one thing (fine bands) or two things (one broad band each). */
function* explanations(shop: Learned): Generator<Case> {
  const bodies = bodyComponents(shop.bodies.before.scatter, shop);
  const [sound] = bodies;
  const parts = (index: number, broad: boolean): Component[] => {
    const pair = index < 2 ? frame.zeroSetups[index]?.pair : frame.stations[2]?.pairs[index - 2];
    if (!pair) throw new RangeError('The round has two zero setups and two setups at the front.');
    return settingComponents(
      slipsOf(pair, frame),
      handOf(shop, pair.technician),
      gaugeOf(shop, pair.gauge),
      shop,
      broad,
    );
  };
  const fine = [parts(0, false), parts(1, false)];
  const broad = [parts(0, true).slice(1), parts(1, true).slice(1)];
  const ordinary = fine.map((list) => list[0]);
  if (!sound || !ordinary[0] || !ordinary[1])
    throw new RangeError('The first hypothesis is that nothing is wrong.');
  const nothing: [Component, Component, Component, Component] = [sound, sound, ordinary[0], ordinary[1]];
  const choices = (width: 'fine' | 'broad'): Component[][] => [
    bodies.filter((body) => body.pattern !== 'none' && body.width === width),
    bodies.filter((body) => body.pattern !== 'none' && body.width === width),
    width === 'fine' ? (fine[0] ?? []).slice(1) : (broad[0] ?? []),
    width === 'fine' ? (fine[1] ?? []).slice(1) : (broad[1] ?? []),
  ];
  const zeros: (typeof nothing)[] = [nothing];
  choices('fine').forEach((list, at) => {
    for (const wrong of list) zeros.push(nothing.map((one, i) => (i === at ? wrong : one)) as typeof nothing);
  });
  const two = choices('broad');
  two.forEach((first, at) =>
    two.slice(at + 1).forEach((second, after) => {
      for (const p of first)
        for (const q of second)
          zeros.push(
            nothing.map((one, i) => (i === at ? p : i === at + 1 + after ? q : one)) as typeof nothing,
          );
    }),
  );
  const [first, again] = [parts(2, false), parts(3, false)];
  for (const [bodyA, bodyB, zeroA, zeroB] of zeros) {
    for (const body of bodies) {
      for (const setting of first) {
        // Damage meets a mis-set in one wide band where nothing else tells the two apart; here the later setup does.
        if (body.pattern !== 'none' && body.width !== 'fine') continue;
        for (const later of again)
          yield { bodies: [bodyA, bodyB, body], zeros: [zeroA, zeroB], settings: [setting, later] };
      }
    }
  }
}

const covarianceOf = (c: Component): number[][] => [
  [c.varLeft, c.covariance],
  [c.covariance, c.varRight],
];

/** The parts of the front heights and of the zero heights, in the order setup, side. */
function weigh(shop: Learned, one: Case) {
  const joint = new Joint();
  const places = ['a', 'b', 'front'];
  one.bodies.forEach((body, g) =>
    joint.add([`B ${places[g]} 0`, `B ${places[g]} 1`], [body.left, body.right], covarianceOf(body)),
  );
  [...one.zeros, ...one.settings].forEach((setting, j) =>
    joint.add([`M ${j} 0`, `M ${j} 1`], [setting.left, setting.right], covarianceOf(setting)),
  );
  const lever = [(X.b - X.front) / (X.b - X.a), (X.front - X.a) / (X.b - X.a)] as const;
  const pairs = frame.stations[2]?.pairs ?? [];
  const seen: Terms[] = [];
  const y: number[] = [];
  const wanted: Terms[] = [];
  for (const [j, pair] of pairs.entries()) {
    const hand = handOf(shop, pair.technician);
    const gauge = gaugeOf(shop, pair.gauge);
    joint.add([`u ${j}`], [hand.bias + gauge.bias], [[hand.biasSe ** 2 + gauge.biasSe ** 2]]);
    for (const s of [0, 1] as const) {
      joint.add([`e ${j} ${s}`], [0], [[hand.reading ** 2 / pair.n[s]]]);
      const gaugePart: Terms = [
        [`M ${j + 2} ${s}`, 1],
        [`M 0 ${s}`, -lever[0]],
        [`M 1 ${s}`, -lever[1]],
      ];
      const bodyPart: Terms = [
        [`B front ${s}`, 1],
        [`B a ${s}`, -lever[0]],
        [`B b ${s}`, -lever[1]],
      ];
      seen.push([...gaugePart, ...bodyPart, [`u ${j}`, 1], [`e ${j} ${s}`, 1]]);
      y.push(pair.y[s]);
      wanted.push(gaugePart, bodyPart);
    }
  }
  for (const z of [0, 1]) {
    for (const s of [0, 1]) wanted.push([[`M ${z} ${s}`, 1]], [[`B ${places[z]} ${s}`, 1]]);
  }
  const posterior = joint.given(seen, y, wanted);
  let logPrior = 0;
  for (const component of [...one.bodies, ...one.zeros, ...one.settings]) logPrior += component.logPrior;
  const [bodyA, bodyB, front] = one.bodies;
  logPrior += Math.log(
    shop.bodies.before.impacts.reduce(
      (sum, { share, patterns }) =>
        sum +
        share *
          patterns.center[bodyA.pattern] *
          patterns.center[bodyB.pattern] *
          patterns.front[front.pattern],
      0,
    ),
  );
  // The length's ends are the left front point and the left point of zero station a.
  const [length] = frame.lengths;
  if (length) {
    const evidence = lengthEvidence(length, handOf(shop, length.technician), shop);
    const left = [front, bodyA].some(({ pattern }) => pattern !== 'none' && pattern !== 'right');
    logPrior += left ? evidence.damaged : evidence.sound;
  }
  return { ...posterior, logWeight: logPrior + posterior.logDensity };
}

function everything(shop: Learned) {
  const weighed = [...explanations(shop)].map((one) => weigh(shop, one));
  const top = Math.max(...weighed.map(({ logWeight }) => logWeight));
  const total = weighed.reduce((sum, { logWeight }) => sum + Math.exp(logWeight - top), 0);
  return { weighed, logEvidence: top + Math.log(total), count: weighed.length };
}

describe('the sum over explanations against every one written out', () => {
  const all = everything(learned);
  const model = modelRound(frame, learned);

  it('finds the same evidence when it may keep everything', () => {
    const found = search(model, { depth: 80, breadth: 1_000_000, share: 1 });
    expect(all.count).toBeGreaterThan(2000);
    expectAbsolute(found.logEvidence, all.logEvidence, 1e-8);
    expect(found.leftOut).toBeLessThan(1e-20);
  });

  it('leaves out no more than it says', () => {
    for (const [depth, breadth] of [
      [9, 600],
      [6, 60],
      [5, 20],
      [4, 10],
      [2, 3],
    ] as const) {
      const found = search(model, { depth, breadth, share: 1 });
      const kept = found.explanations.reduce(
        (sum, { explanation }) => sum + Math.exp(explanation.logWeight - all.logEvidence),
        0,
      );
      expect(kept, `depth ${depth}, breadth ${breadth}`).toBeLessThanOrEqual(1 + 1e-9);
      expect(1 - kept, `depth ${depth}, breadth ${breadth}`).toBeLessThanOrEqual(found.leftOut + 1e-9);
    }
  });

  it('gives the class probabilities and both parts of every height', () => {
    const judged = judgeRound(round, learned, { depth: 30, breadth: 100_000, share: 1 });
    if ('why' in judged) throw new Error(judged.why);
    const order = ['b1-03', 'b1-04', 'b1-01', 'b1-02'].flatMap((setup) => [
      { setup, side: 'L' },
      { setup, side: 'R' },
    ]);
    order.forEach(({ setup, side }, h) => {
      const height = judged.heights.find((one) => one.setup === setup && one.side === side);
      const expected = { neither: 0, gauge: 0, body: 0, both: 0, misset: 0, moved: 0 };
      for (const { logWeight, mean, covariance } of all.weighed) {
        const weight = Math.exp(logWeight - all.logEvidence);
        const [g, b] = [2 * h, 2 * h + 1];
        const classes = classProbabilities(
          {
            gauge: mean[g] ?? NaN,
            body: mean[b] ?? NaN,
            varGauge: covariance[g]?.[g] ?? NaN,
            varBody: covariance[b]?.[b] ?? NaN,
            covariance: covariance[g]?.[b] ?? NaN,
          },
          3,
        );
        expected.neither += weight * classes[0];
        expected.gauge += weight * classes[1];
        expected.body += weight * classes[2];
        expected.both += weight * classes[3];
        expected.misset += weight * (mean[g] ?? NaN);
        expected.moved += weight * (mean[b] ?? NaN);
      }
      for (const cause of ['neither', 'gauge', 'body', 'both'] as const)
        expectAbsolute(height?.p[cause], expected[cause], 1e-3, `${setup} ${side} ${cause}`);
      expectAbsolute(height?.misset, expected.misset, 0.01, `${setup} ${side} gauge part`);
      expectAbsolute(height?.body, expected.moved, 0.01, `${setup} ${side} body part`);
    });
  });
});

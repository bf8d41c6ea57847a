import { describe, expect, it } from 'vitest';
import { componentAt, type Explanation } from '@/lib/assess/cause/explanation';
import { frameRound } from '@/lib/assess/cause/frame';
import type { Learned } from '@/lib/assess/cause/learned';
import { modelRound, type RoundModel } from '@/lib/assess/cause/model';
import { search } from '@/lib/assess/cause/search';
import { addExpectedInformation } from '@/lib/assess/learn/expected-information';
import { roundSlots } from '@/lib/assess/learn/round-scores';
import { emptyTally } from '@/lib/assess/learn/tally';
import { knownShop, sparse } from '@/tests/simulation/known';
import { roundOf } from '@/tests/simulation/round';
import { expectRelative } from '../stats/closeness';
import { inverse, Joint, type Matrix, type Terms } from './gaussian';

/*
 * Two hands, a station hung twice, one hung against a zero gauge that was set anew, and one read on the left alone.
 * The reference is the definition: readings are normal with covariance V, and the information is ½ tr(V⁻¹ ∂V V⁻¹ ∂V) on
 * the logarithms of the scatters, the derivatives by central differences, and ∂μᵀ V⁻¹ ∂μ on the biases.
 */
const round = roundOf({
  clearance: 100,
  hung: [
    { at: 1100, zero: true, left: 0.1, right: -0.2, gauge: 'G1' },
    { at: 2600, zero: true, left: 0, right: 0.3, gauge: 'G2', technician: 'T2' },
    { at: 0, left: 0.4, right: -0.9, n: [2, 1], gauge: 'G3' },
    { at: 3100, left: -99.6, n: [3, 0], gauge: 'G4', technician: 'T2' },
    { at: 0, left: 0.6, right: 0.3, n: [1, 2], gauge: 'G3', technician: 'T2' },
    { at: 1100, zero: true, left: 0.2, right: 0.1, n: [2, 1], gauge: 'G1' },
    { at: 3700, left: 0.1, right: -0.6, n: [2, 2], gauge: 'G4' },
  ],
});

const shopOf = ({ T1 = 0.9, T2 = 1.2, body = 0.4 }: Partial<Record<Scatter, number>>): Learned => {
  const learned = sparse(
    knownShop({
      technicians: { T1: { reading: 0.5, setting: T1 }, T2: { reading: 0.6, setting: T2 } },
      gauges: { G1: {}, G2: {}, G3: {}, G4: {} },
    }),
  );
  learned.common = 0.45;
  learned.bodies.before.scatter = body;
  return learned;
};
type Scatter = 'T1' | 'T2' | 'body';
const START: Record<Scatter, number> = { T1: 0.9, T2: 1.2, body: 0.4 };

function modelOf(learned: Learned): RoundModel {
  const frame = frameRound(round);
  if ('why' in frame) throw new Error(frame.why);
  return modelRound(frame, learned);
}

/** Nothing is damaged, and all that was set wrong is the rear gauge, hung without its clearance. */
function explained(model: RoundModel): Explanation {
  const found = search(model, { depth: 30, breadth: 4000, share: 1 }).explanations.find(
    ({ explanation }) =>
      [...explanation.bodies].every((body) => componentAt(model.bodies, body).pattern === 'none') &&
      [...explanation.zeroSettings].every((own) => own === 0) &&
      model.steps.every(({ settings }, step) =>
        ['ordinary', 'clearance-omitted'].includes(
          componentAt(settings, explanation.settings[step] ?? -1).misset,
        ),
      ),
  );
  if (found === undefined) throw new Error('The search did not keep the explanation.');
  return found.explanation;
}

const SIDES = [0, 1] as const;

interface Seen {
  terms: Terms;
  technician: string;
  gauge: string;
}

/** Everything that was read away from the zero stations, and what it is made of. */
function joint(learned: Learned): { seen: Seen[]; V: Matrix } {
  const model = modelOf(learned);
  const all = new Joint();
  const sdOf = (technician: string): number => learned.technicians[technician]?.setting ?? Number.NaN;
  const settingOf = (name: string, technician: string): void => {
    const v = sdOf(technician) ** 2;
    all.add(
      [`${name} L`, `${name} R`],
      [0, 0],
      [
        [v, learned.common * v],
        [learned.common * v, v],
      ],
    );
  };
  const body = learned.bodies.before.scatter ** 2;
  model.frame.stations.forEach((_, g) =>
    all.add(
      [`body ${g} L`, `body ${g} R`],
      [0, 0],
      [
        [body, 0],
        [0, body],
      ],
    ),
  );
  model.zeros.forEach(({ pair }, k) => settingOf(`zero ${k}`, pair.technician));
  const seen: Seen[] = [];
  model.steps.forEach((pair, i) => {
    settingOf(`step ${i}`, pair.pair.technician);
    all.add([`common ${i}`], [0], [[pair.commonNoise]]);
    for (const side of SIDES) {
      if (!(side === 0 ? pair.hasLeft : pair.hasRight)) continue;
      const s = side === 0 ? 'L' : 'R';
      all.add([`reading ${i} ${s}`], [0], [[pair.noise[side]]]);
      const carried = pair.zeros.flatMap((error, z): [string, number][] => {
        const k = model.zeros.findIndex((zero) => zero.error === error);
        const weight = -pair.weights[z as 0 | 1];
        return [
          [`zero ${k} ${s}`, weight],
          [`body ${model.zeros[k]?.station ?? -1} ${s}`, weight],
        ];
      });
      seen.push({
        technician: pair.pair.technician,
        gauge: pair.pair.gauge,
        terms: [
          [`body ${pair.station} ${s}`, 1],
          [`step ${i} ${s}`, 1],
          [`common ${i}`, 1],
          [`reading ${i} ${s}`, 1],
          ...carried,
        ],
      });
    }
  });
  return { seen, V: seen.map((a) => seen.map((b) => all.covariance(a.terms, b.terms))) };
}

const times = (a: Matrix, b: Matrix): number[][] =>
  a.map((row) =>
    (b[0] ?? []).map((_, j) => row.reduce((sum, value, k) => sum + value * (b[k]?.[j] ?? Number.NaN), 0)),
  );
const trace = (a: Matrix): number => a.reduce((sum, row, i) => sum + (row[i] ?? Number.NaN), 0);

/** ∂V by the logarithm of one scatter. */
function derivative(of: Scatter): Matrix {
  const h = 1e-5;
  const at = (log: number): Matrix => joint(shopOf({ ...START, [of]: START[of] * Math.exp(log) })).V;
  const [more, less] = [at(h), at(-h)];
  return more.map((row, i) => row.map((value, j) => (value - (less[i]?.[j] ?? Number.NaN)) / (2 * h)));
}

describe('the information that the model expects in a round', () => {
  const learned = shopOf(START);
  const model = modelOf(learned);
  const slots = roundSlots(model, emptyTally(learned, ['T1', 'T2'], ['G1', 'G2', 'G3', 'G4']));
  addExpectedInformation(model, explained(model), 1, slots);
  const { seen, V } = joint(learned);
  const P = inverse(V);
  const slotOf: Record<Scatter, number> = {
    T1: slots.zeros[0] ?? -1,
    T2: slots.zeros[1] ?? -1,
    body: slots.body,
  };

  const scatters: Scatter[] = ['T1', 'T2', 'body'];
  it.each(scatters.flatMap((a) => scatters.map((b) => ({ a, b }))))(
    'is ½ tr(V⁻¹ ∂V V⁻¹ ∂V) on the scatters of $a and $b',
    ({ a, b }) => {
      const n = slots.scatters.rows.length;
      expect(n).toBe(3);
      const reference = 0.5 * trace(times(times(P, derivative(a)), times(P, derivative(b))));
      expectRelative(slots.scatters.expected[slotOf[a] * n + slotOf[b]], reference, 1e-8);
    },
  );

  it('is ∂μᵀ V⁻¹ ∂μ on the biases of hands and gauges, which move both sides alike', () => {
    const n = slots.biases.rows.length;
    const places = new Map<number, (one: Seen) => boolean>();
    model.steps.forEach(({ pair: { technician, gauge } }, i) => {
      places.set(slots.steps[i]?.hand ?? -1, (one) => one.technician === technician);
      places.set(slots.steps[i]?.gauge ?? -1, (one) => one.gauge === gauge);
    });
    expect([...places.keys()].sort()).toEqual([0, 1, 2, 3]);
    for (const [a, isOfA] of places)
      for (const [b, isOfB] of places) {
        let reference = 0;
        seen.forEach((one, i) =>
          seen.forEach((other, j) => {
            if (isOfA(one) && isOfB(other)) reference += P[i]?.[j] ?? Number.NaN;
          }),
        );
        expectRelative(slots.biases.expected[a * n + b], reference, 1e-9);
      }
  });
});

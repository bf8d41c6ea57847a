import type { Explanation } from '../cause/explanation';
import type { RoundModel } from '../cause/model';
import { type Part, partsOf } from './parts';
import type { RoundScores, RoundSlots } from './round-scores';

/** Covariance of what is expected of two parts, mm²: left and right of the first in rows, of the second in columns. */
const shared = { LL: 0, LR: 0, RL: 0, RR: 0 };

/**
 * Adds what the model expects of the information in a round (Fisher's) on the scatters and the biases, were this its
 * explanation. For normal readings of covariance V it is ½ tr(V⁻¹ ∂V V⁻¹ ∂V) on what V depends on, and ∂μᵀ V⁻¹ ∂μ on
 * what their mean does (Searle, Casella & McCulloch, *Variance Components*, 1992; from memory, held to finite
 * differences). V is as large as the round, so it is worked out of the parts: Q ∂ V⁻¹ ∂ᵀ Q, with Q what they were
 * before the readings, is the covariance of what is expected of them.
 * @param weight of the explanation
 */
export function addExpectedInformation(
  model: RoundModel,
  explanation: Explanation,
  weight: number,
  slots: RoundSlots,
): void {
  const { scatters, biases } = slots;
  const parts = partsOf(model, explanation, slots);
  const n = explanation.mean.length;
  for (let i = 0; i < parts.length; i++) {
    const a = parts[i];
    if (!a) break;
    for (let j = 0; j <= i; j++) {
      const b = parts[j];
      if (!b) break;
      const ofScatters = a.scatter >= 0 && b.scatter >= 0;
      const ofBiases = a.hand >= 0 && b.hand >= 0;
      if (!ofScatters && !ofBiases) continue;
      if (i === j) shareItself(a);
      else share(a, b, n);
      if (ofScatters) {
        const value = 2 * weight * onScatters(a, b);
        scatters.expect(a.scatter, b.scatter, value);
        if (i !== j) scatters.expect(b.scatter, a.scatter, value);
      }
      if (!ofBiases) continue;
      const value = weight * onBiases(a, b);
      expectBiases(biases, a, b, value);
      if (i !== j) expectBiases(biases, b, a, value);
    }
  }
}

function expectBiases(biases: RoundScores, a: Part, b: Part, value: number): void {
  biases.expect(a.hand, b.hand, value);
  biases.expect(a.hand, b.gauge, value);
  biases.expect(a.gauge, b.hand, value);
  biases.expect(a.gauge, b.gauge, value);
}

/** Writes `shared` of a part with itself. */
function shareItself({ LL, RR, LR }: Part): void {
  shared.LL = LL;
  shared.RR = RR;
  shared.LR = LR;
  shared.RL = LR;
}

/** Writes `shared`. Two parts were independent before the readings, so all that they share is what these left. */
function share({ rows, from }: Part, { at, onLeft, onRight }: Part, n: number): void {
  let LL = 0;
  let LR = 0;
  let RL = 0;
  let RR = 0;
  for (let k = 0; k < at.length; k++) {
    const place = from + (at[k] ?? 0);
    const left = rows[place] ?? 0;
    const right = rows[place + n] ?? 0;
    LL -= left * (onLeft[k] ?? 0);
    LR -= left * (onRight[k] ?? 0);
    RL -= right * (onLeft[k] ?? 0);
    RR -= right * (onRight[k] ?? 0);
  }
  shared.LL = LL;
  shared.LR = LR;
  shared.RL = RL;
  shared.RR = RR;
}

/** tr(Qa⁻¹ S Qb⁻¹ Sᵀ) with what is `shared`: half the information on the logarithms of two scatters. */
function onScatters(a: Part, b: Part): number {
  const { LL, LR, RL, RR } = shared;
  const aLL = a.iLL * LL + a.iLR * RL;
  const aLR = a.iLL * LR + a.iLR * RR;
  const aRL = a.iLR * LL + a.iRR * RL;
  const aRR = a.iLR * LR + a.iRR * RR;
  return (
    (aLL * b.iLL + aLR * b.iLR) * LL +
    (aLL * b.iLR + aLR * b.iRR) * LR +
    (aRL * b.iLL + aRR * b.iLR) * RL +
    (aRL * b.iLR + aRR * b.iRR) * RR
  );
}

/** 1ᵀ Qa⁻¹ S Qb⁻¹ 1 with what is `shared`: the information on two biases, each of which moves both sides alike. */
function onBiases(a: Part, b: Part): number {
  const { LL, LR, RL, RR } = shared;
  const bL = b.iLL + b.iLR;
  const bR = b.iLR + b.iRR;
  return (a.iLL + a.iLR) * (LL * bL + LR * bR) + (a.iLR + a.iRR) * (RL * bL + RR * bR);
}

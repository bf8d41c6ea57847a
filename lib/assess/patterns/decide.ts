import { allBeyond, beyond, meanOf, quantile, type Part } from './mixture';
import { NAMED_FROM, OPEN_FROM, type PatternFinding, type WhyNot } from './types';

/** A condition that keeps a pattern from being named for something else: contrast `at` beyond `limit` as well. */
export interface Condition {
  limit: number;
  otherwise: WhyNot;
}

export interface Question extends Pick<
  PatternFinding,
  'pattern' | 'section' | 'side' | 'asRead' | 'threshold'
> {
  /** The contrast itself first, then one for each condition. */
  parts: readonly Part[];
  conditions: readonly Condition[];
  /** The only direction that counts; both where absent. */
  sign?: 1 | -1;
}

/** Likelier than not. */
const LIKELIER = 0.5;

/** Answers a question: how large the contrast is, how likely the pattern, and why it is not named where it is not. */
export function decide({ parts, conditions, sign, ...question }: Question): PatternFinding {
  const { threshold, asRead } = question;
  const limits = [threshold, ...conditions.map(({ limit }) => limit)];
  const signs = sign === undefined ? [1, -1] : [sign];
  const [best] = signs
    .map((one) => ({ sign: one, probability: allBeyond(parts, limits, one) }))
    .sort((a, b) => b.probability - a.probability || meanOf(parts) * (b.sign - a.sign));
  const probability = best?.probability ?? 0;
  const direction = best?.sign ?? 1;
  const named = probability >= NAMED_FROM;
  return {
    ...question,
    size: meanOf(parts),
    low: quantile(parts, 0.025),
    high: quantile(parts, 0.975),
    probability,
    named,
    why: named ? null : whyNot(parts, conditions, { threshold, asRead, direction }, probability),
  };
}

function whyNot(
  parts: readonly Part[],
  conditions: readonly Condition[],
  { threshold, asRead, direction }: { threshold: number; asRead: number; direction: number },
  probability: number,
): WhyNot {
  if (probability >= OPEN_FROM) return 'open';
  const large = beyond(parts, threshold, direction);
  if (large >= LIKELIER) {
    // The condition that fails most: which is met least often on its own.
    const met = conditions.map(({ limit, otherwise }, i) => ({
      otherwise,
      met: beyond(parts, limit, direction, i + 1),
    }));
    const [least] = met.sort((a, b) => a.met - b.met);
    if (least !== undefined && least.met < LIKELIER) return least.otherwise;
    return 'open';
  }
  return direction * asRead > threshold ? 'gauge' : 'small';
}

import { allBeyond, beyond, mayBeBeyond, meanOf, quantile, type Part } from './mixture';
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
  /** Of so many of the contrasts: the contrast itself comes first, then one for each condition. */
  parts: (contrasts: number) => readonly Part[];
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
  const alone = parts(1);
  // Most rounds are decided by the contrast alone; the conditions are the longer part of the work.
  let whole: readonly Part[] | undefined;
  const withConditions = () => (whole ??= parts(limits.length));
  const signs = sign === undefined ? [1, -1] : [sign];
  const [best] = signs
    .map((one) => ({
      sign: one,
      probability: mayBeBeyond(alone, threshold, one) ? allBeyond(withConditions(), limits, one) : 0,
    }))
    .sort((a, b) => b.probability - a.probability || meanOf(alone) * (b.sign - a.sign));
  const probability = best?.probability ?? 0;
  const direction = best?.sign ?? 1;
  const named = probability >= NAMED_FROM;
  return {
    ...question,
    size: meanOf(alone),
    low: quantile(alone, 0.025),
    high: quantile(alone, 0.975),
    probability,
    named,
    why: named
      ? null
      : whyNot({ alone, withConditions, conditions, threshold, asRead }, direction, probability),
  };
}

function whyNot(
  {
    alone,
    withConditions,
    conditions,
    threshold,
    asRead,
  }: Pick<Question, 'conditions' | 'threshold' | 'asRead'> & {
    alone: readonly Part[];
    withConditions: () => readonly Part[];
  },
  direction: number,
  probability: number,
): WhyNot {
  if (probability >= OPEN_FROM) return 'open';
  const large = beyond(alone, threshold, direction);
  if (large >= LIKELIER) {
    const all = withConditions();
    // The condition that fails most: which is met least often on its own.
    const met = conditions.map(({ limit, otherwise }, i) => ({
      otherwise,
      met: beyond(all, limit, direction, i + 1),
    }));
    const [least] = met.sort((a, b) => a.met - b.met);
    if (least !== undefined && least.met < LIKELIER) return least.otherwise;
    return 'open';
  }
  return direction * asRead > threshold ? 'gauge' : 'small';
}

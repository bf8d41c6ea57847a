import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitVarianceComponents } from '@/lib/stats/variance-components';
import { seededNormal, seededUniform } from './seeded-normal';

/**
 * The criterion against its definition, with the covariance matrix of the readings written out:
 * (N − p) ln 2π + ln |V| + ln |X' V⁻¹ X| + r' V⁻¹ r (Bates et al. 2015, J. Statist. Software 67(1), section 3.4).
 */
function plainCriterion(values: number[], random: string[][], variances: number[], X: number[][]): number {
  const residual = variances.at(-1) ?? NaN;
  const V = values.map((_, i) =>
    values.map((__, j) =>
      random.reduce(
        (sum, labels, k) => sum + (labels[i] === labels[j] ? (variances[k] ?? 0) : 0),
        i === j ? residual : 0,
      ),
    ),
  );
  const { rows, logDeterminant } = reduce(V, [values, ...columnsOf(X)]);
  const [y = [], ...columns] = rows;
  const normal = columns.map((a) => columns.map((b) => dot(a, b)));
  const projected = reduce(normal, [columns.map((column) => dot(column, y))]);
  const [right = []] = projected.rows;
  const fixed = X[0]?.length ?? 0;
  return (
    (values.length - fixed) * Math.log(2 * Math.PI) +
    logDeterminant +
    projected.logDeterminant +
    dot(y, y) -
    dot(right, right)
  );
}

/** L⁻¹ of each vector, where L L' is the matrix, and ln of its determinant. */
function reduce(matrix: number[][], vectors: number[][]): { rows: number[][]; logDeterminant: number } {
  const L: number[][] = [];
  matrix.forEach((line, i) => {
    const own: number[] = [];
    for (let j = 0; j <= i; j++) {
      const rest = (line[j] ?? 0) - dot(own.slice(0, j), (j === i ? own : (L[j] ?? [])).slice(0, j));
      own.push(j === i ? Math.sqrt(rest) : rest / (L[j]?.[j] ?? NaN));
    }
    L.push(own);
  });
  const rows = vectors.map((vector) => {
    const solved: number[] = [];
    vector.forEach((value, i) => {
      solved.push((value - dot((L[i] ?? []).slice(0, i), solved)) / (L[i]?.[i] ?? NaN));
    });
    return solved;
  });
  return { rows, logDeterminant: L.reduce((sum, line) => sum + 2 * Math.log(line.at(-1) ?? NaN), 0) };
}

const dot = (a: number[], b: number[]): number => a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
const columnsOf = (X: number[][]): number[][] => (X[0] ?? []).map((_, j) => X.map((row) => row[j] ?? 0));

/** Crossed and nested factors, fixed and random, at random; readings of random size. */
function design(seed: number) {
  const uniform = seededUniform(seed);
  const normal = seededNormal(uniform);
  const pick = (count: number) => Math.floor(uniform() * count);
  const size = 12 + pick(14);
  const label = (levels: number) => Array.from({ length: size }, () => String(pick(levels)));
  const outer = label(4);
  const inner = outer.map((name) => `${name} ${pick(2)}`);
  const crossed = label(3);
  const fixed = label(3);
  const step = new Map<string, number>();
  const effect = (name: string) => {
    const known = step.get(name) ?? normal();
    step.set(name, known);
    return known;
  };
  const values = outer.map(
    (name, i) =>
      effect(`o${name}`) +
      effect(`i${inner[i] ?? ''}`) +
      effect(`c${crossed[i] ?? ''}`) * pick(2) +
      0.4 * normal(),
  );
  return { values, outer, inner, crossed, fixed };
}

describe('the REML criterion', () => {
  it('is that of the definition at the estimates, and no smaller nearby', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.boolean(), (seed, withFixed) => {
        const { values, outer, inner, crossed, fixed } = design(seed);
        const random = { outer, inner, crossed };
        const levels = [...new Set(fixed)].sort();
        fc.pre(Object.values(random).every((labels) => new Set(labels).size > 1) && levels.length > 1);
        fc.pre(new Set(inner).size > new Set(outer).size && new Set(inner).size < values.length);
        const found = fitVarianceComponents({
          values,
          random,
          intervals: 'none',
          ...(withFixed ? { fixed: { fixed } } : {}),
        });
        const X = fixed.map((level) => [
          1,
          ...(withFixed ? levels.slice(1).map((name) => (name === level ? 1 : 0)) : []),
        ]);
        const variances = [...found.components, found.residual].map(({ sd }) => (sd ?? NaN) ** 2);
        const at = (changed: number[]) => plainCriterion(values, [outer, inner, crossed], changed, X);
        const least = found.criterion ?? NaN;
        expect(Math.abs(at(variances) - least)).toBeLessThan(1e-8);
        variances.forEach((variance, k) => {
          for (const step of variance > 0 ? [-0.02 * variance, 0.02 * variance] : [1e-4, 1e-2]) {
            expect(at(variances.map((v, i) => (i === k ? v + step : v)))).toBeGreaterThan(least - 1e-9);
          }
        });
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it('is that of the definition where nested factors of many levels are eliminated one after another', () => {
    const uniform = seededUniform(99);
    const normal = seededNormal(uniform);
    const pick = (count: number) => Math.floor(uniform() * count);
    const size = 260;
    const draw = (levels: number, sd: number) => Array.from({ length: levels }, () => sd * normal());
    const effects = {
      job: draw(50, 1),
      dimension: draw(120, 0.8),
      technician: draw(4, 0.5),
      sheet: draw(60, 2),
    };
    // Every dimension lies in one job; the sheet, which is fixed, crosses both.
    const dimension = Array.from({ length: size }, (_, i) => (i < 120 ? i : pick(120)));
    const job = dimension.map((d) => d % 50);
    const sheet = dimension.map(() => pick(60));
    const technician = dimension.map(() => pick(4));
    const values = dimension.map(
      (d, i) =>
        (effects.dimension[d] ?? 0) +
        (effects.job[job[i] ?? 0] ?? 0) +
        (effects.technician[technician[i] ?? 0] ?? 0) +
        (effects.sheet[sheet[i] ?? 0] ?? 0) +
        0.4 * normal(),
    );
    for (const withFixed of [false, true]) {
      const found = fitVarianceComponents({
        values,
        random: { job, dimension, technician },
        ...(withFixed ? { fixed: { sheet } } : {}),
        intervals: 'none',
      });
      const levels = [...new Set(sheet)].sort((a, b) => a - b).slice(1);
      const X = sheet.map((own) => [1, ...(withFixed ? levels.map((level) => (level === own ? 1 : 0)) : [])]);
      const variances = [...found.components, found.residual].map(({ sd }) => (sd ?? NaN) ** 2);
      const random = [job, dimension, technician].map((codes) => codes.map(String));
      const at = (changed: number[]) => plainCriterion(values, random, changed, X);
      expect(Math.abs(at(variances) - (found.criterion ?? NaN))).toBeLessThan(1e-7);
      variances.forEach((variance, k) => {
        for (const step of [-0.03 * variance, 0.03 * variance]) {
          expect(at(variances.map((v, i) => (i === k ? v + step : v)))).toBeGreaterThan(
            found.criterion ?? NaN,
          );
        }
      });
    }
  });
});

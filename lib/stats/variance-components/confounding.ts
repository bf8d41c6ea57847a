import { at } from '@/lib/stats/linear-algebra/element';
import { isNested, type CodedFactor } from './build-model';
import { dependentVariances } from './dependent-variances';
import { assemble, newEquations, setScale } from './equations';
import { factorise } from './factorise';
import type { MixedModel } from './mixed-model';
import { traces } from './traces';

/**
 * Refuses factors that no readings could tell apart, by name.
 *
 * RangeError where two random factors split the readings in the same way, where every level of a random factor has
 * one reading only (its spread is then the residual's), where a random factor is coarser than a fixed one, and
 * where one fixed factor determines another, and where a small design leaves a combination of variances open.
 */
export function refuseConfounded(
  random: readonly CodedFactor[],
  fixed: readonly CodedFactor[],
  n: Float64Array,
  readings: number,
): void {
  const cells = n.length;
  random.forEach((factor, i) => {
    for (const other of random.slice(i + 1)) {
      if (factor.levels === other.levels && isNested(factor, other, cells)) {
        refuse(
          `Random factors "${factor.name}" and "${other.name}"`,
          'they split the readings in the same way',
        );
      }
    }
    if (factor.levels === readings) {
      refuse(`Random factor "${factor.name}" and the residual`, 'every level has one reading only');
    }
    for (const other of fixed) {
      if (isNested(other, factor, cells)) {
        refuse(
          `Random factor "${factor.name}" and fixed factor "${other.name}"`,
          `each level of "${other.name}" lies within one level of "${factor.name}"`,
        );
      }
    }
  });
  fixed.forEach((factor, i) => {
    for (const other of fixed.slice(i + 1)) {
      const [inner, outer] = factor.levels >= other.levels ? [factor, other] : [other, factor];
      if (isNested(inner, outer, cells)) {
        refuse(
          `Fixed factors "${inner.name}" and "${outer.name}"`,
          `the level of "${inner.name}" determines that of "${outer.name}"`,
        );
      }
    }
  });
  const dependent = dependentVariances(random, fixed, n, readings);
  if (dependent.length > 0) {
    const listed = dependent.map((name) => (name === null ? 'the residual' : `"${name}"`)).join(', ');
    refuse(
      `The variances of ${listed}`,
      'in this design a combination of them changes nothing that can be read',
    );
  }
}

/** The same for what takes several fixed factors together; needs the model. */
export function refuseDependent(model: MixedModel, names: readonly string[]): void {
  const fixed = model.factors.filter((factor) => factor.component < 0);
  if (fixed.length < 2) return;
  const equations = newEquations(model);
  const none = new Float64Array(model.components);
  assemble(equations, 0);
  setScale(equations, none);
  const factored = factorise(equations, 1e-10);
  const listed = fixed.map((factor) => `"${factor.name}"`).join(', ');
  if ('dependent' in factored) {
    refuse(`Fixed factors ${listed}`, 'the levels of some of them together determine those of another');
  }
  const trace = traces(equations, none);
  names.forEach((name, component) => {
    if (at(trace, component) < 1e-9 * model.readings) {
      refuse(`Random factor "${name}" and fixed factors ${listed}`, 'the fixed effects explain it wholly');
    }
  });
}

function refuse(who: string, because: string): never {
  throw new RangeError(`${who} are perfectly confounded: ${because}. Leave one of them out.`);
}

import { inCenter, zeroNames } from '@/lib/assess/round/decidable';
import { type RoundContext, shownOf } from './context';

/**
 * Whether a length of the center section was read before the first height of the round. Counts for whoever hung the
 * first height. Where both carry the same time, nobody can tell, and the round does not count.
 */
export function gatherOrder(context: RoundContext): void {
  const { round } = context;
  const zeros = zeroNames(round);
  const first = round.setups.find(({ observations }) =>
    observations.some(({ quantity }) => quantity === 'height'),
  );
  if (first === undefined) return;
  const heightAt = timeOf(first.observations.filter(({ quantity }) => quantity === 'height'));
  const lengthAt = timeOf(
    round.setups
      .flatMap(({ observations }) => observations)
      .filter((seen) => seen.quantity === 'length' && inCenter(seen, zeros)),
  );
  if (lengthAt === heightAt) return;
  const sheaf = context.sheafOf(first.technician);
  const before = lengthAt < heightAt;
  sheaf.look('heights-first');
  sheaf.round('heights-first', !before);
  if (!before) sheaf.show('heights-first', shownOf(context, first));
}

const timeOf = (observations: readonly { takenAt: number }[]): number =>
  Math.min(...observations.map(({ takenAt }) => takenAt));

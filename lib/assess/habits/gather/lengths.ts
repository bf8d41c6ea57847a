import { CLIP, clipped, type RoundContext, shownOf } from './context';

/** A length read by tram in the job, for the slope on 1 / length. */
export interface TramLength {
  technician: string;
  /** 1000 mm / sheet value. */
  x: number;
  /** Clipped deviation, mm. */
  y: number;
}

/** Lengths by tram; a tape is a quick check. What both pointers do wrong shows in their mean and in their slope. */
export function gatherLengths(context: RoundContext, lengths: TramLength[]): void {
  for (const setup of context.round.setups) {
    if (setup.gaugeKind === 'tape') continue;
    const own = setup.observations.filter(({ quantity, nominal }) => quantity === 'length' && nominal > 0);
    if (own.length === 0) continue;
    const sheaf = context.sheafOf(setup.technician);
    sheaf.look('pointer-width');
    sheaf.look('unequal-pointers');
    for (const { nominal, deviation } of own) {
      const x = 1000 / nominal;
      const y = clipped(deviation, CLIP.length);
      lengths.push({ technician: setup.technician, x, y });
      sheaf.mean('pointer-width', 1, y, setup.gauge);
      sheaf.tally.lengths.n++;
      sheaf.tally.lengths.x += x;
      if (y !== deviation || y === 0) continue;
      sheaf.show(`pointer-width:${y > 0 ? 'long' : 'short'}`, shownOf(context, setup));
      if (y < 0) sheaf.show('unequal-pointers', shownOf(context, setup));
    }
  }
}

/**
 * Slope of the deviations on 1 / length within one technician's lengths of a job.
 *
 * Pointers stand at right angles to the bar. With pointers of unequal length, δ apart, the bar is no longer parallel
 * to the line through both tips: the tips are D apart along the bar (what the scale shows) and δ apart across it, so
 * the true distance L of the points is L² = D² + δ², whatever their difference in height. The scale shows
 * D = √(L² − δ²) ≈ L − δ² / 2L: every length short, a short one more than a long one, in proportion to 1 / L. (The
 * next term, δ⁴ / 8L³, is below a hundredth of a millimetre for δ ≤ 100 mm and L ≥ 1100 mm, and below 0.1 mm for
 * L ≥ 500 mm.) The slope on 1000 mm / L is −δ² / 2000 mm. A constant (width of a pointer, a tram's scale zero) does
 * not enter, since the slope is taken within the job.
 */
export function gatherPointers(lengths: readonly TramLength[], sheafOf: RoundContext['sheafOf']): void {
  for (const technician of new Set(lengths.map((one) => one.technician))) {
    const own = lengths.filter((one) => one.technician === technician);
    const middle = own.reduce((sum, { x }) => sum + x, 0) / own.length;
    let squares = 0;
    let cross = 0;
    for (const { x, y } of own) {
      squares += (x - middle) ** 2;
      cross += (x - middle) * y;
    }
    if (squares > 1e-12) sheafOf(technician).mean('unequal-pointers', squares, cross);
  }
}

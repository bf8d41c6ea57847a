import type { DatumLine } from '../types';
import type { Bar, Fault, Hypothesis, Weighed } from './types';

/** Heights read high or low; a centre pin stands off to one side. */
export type Kind = 'height' | 'centerline';

/** A datum that stays within this at both ends, mm, is called straight. */
const STRAIGHT = 0.5;

/** Evidence of less than a factor of 1.2 is not put in a sentence; the table has it. */
const WORTH_SAYING = Math.log(1.2);

const size = (value: number): string => Math.abs(value).toFixed(1);

function direction(value: number, kind: Kind): string {
  if (kind === 'centerline') return value < 0 ? 'in the minus direction' : 'in the plus direction';
  return value < 0 ? 'low' : 'high';
}

/** `A and B` or `K`: the letters of the sides concerned. */
function place({ points: [left, right], sides }: Pick<Fault, 'points' | 'sides'>): string {
  if (sides === 'left') return left ?? right ?? '?';
  if (sides === 'right') return right ?? left ?? '?';
  return left !== null && right !== null && left !== right ? `${left} and ${right}` : (left ?? right ?? '?');
}

function amount({ sides, left, right }: Fault, kind: Kind): string {
  if (kind === 'centerline') return `${size(left)} mm ${direction(left, kind)}`;
  if (sides === 'left') return `${size(left)} mm ${direction(left, kind)} on the left`;
  if (sides === 'right') return `${size(right)} mm ${direction(right, kind)} on the right`;
  if (direction(left, kind) !== direction(right, kind))
    return `${size(left)} mm ${direction(left, kind)} on the left and ${size(right)} mm ${direction(right, kind)} on the right`;
  return size(left) === size(right)
    ? `${size(left)} mm ${direction(left, kind)} on both sides`
    : `${size(left)} mm (left) and ${size(right)} mm (right) ${direction(left, kind)}`;
}

/** `Gauge at K set 10.2 mm low on the left: tape read 10 mm off`. */
export function faultWords(fault: Fault, kind: Kind = 'height'): string {
  const at = `at ${place(fault)}`;
  const slip = fault.slip === null ? '' : ` (fits: ${fault.slip})`;
  const tilt = fault.zero ? ', so the datum is tilted' : '';
  if (fault.what === 'gauge') {
    const gauge = fault.zero ? 'Zero gauge' : 'Gauge';
    const set = kind === 'height' ? 'set' : 'hung';
    const which = fault.repeated ? ` (setup ${fault.setup ?? ''})` : '';
    return `${gauge} ${fault.gauge ?? ''} ${at}${which} ${set} ${amount(fault, kind)}${slip}${tilt}`;
  }
  const body = fault.zero ? 'Body at the zero station' : 'Body at';
  return `${body} ${place(fault)} ${amount(fault, kind)}${tilt}`;
}

/** The name of a hypothesis: everything that it takes to be wrong. */
export function hypothesisWords({ faults }: Pick<Hypothesis, 'faults'>, kind: Kind = 'height'): string {
  if (faults.length === 0) return 'Ordinary scatter of setting and reading, and nothing else';
  return faults
    .map((fault, index) => {
      const words = faultWords(fault, kind);
      return index === 0 ? words : `${words[0]?.toLowerCase() ?? ''}${words.slice(1)}`;
    })
    .join('; ');
}

/** Where a hypothesis has the datum: straight, or how far off at each end. */
export function datumWords(datum: readonly DatumLine[], kind: Kind = 'height'): string {
  const line = kind === 'height' ? 'datum' : 'line through the centre pins of the zero gauges';
  const ends = [
    ['front', datum.map(({ side, front }) => ({ side, error: front.error }))],
    ['rear', datum.map(({ side, rear }) => ({ side, error: rear.error }))],
  ] as const;
  const off = ends.flatMap(([name, sides]) =>
    sides.every(({ error }) => Math.abs(error) < STRAIGHT)
      ? []
      : [
          `${sides.map(({ side, error }) => `${end(error)}${sideOf(side, kind)}`).join(', ')} at the ${name} zero station`,
        ],
  );
  if (off.length === 0)
    return `The ${line} stays where it is, within half a millimetre at both zero stations.`;
  return `The ${line} is off by ${off.join('; ')}. All other stations read off along that line, the other way round.`;
}

const sideOf = (side: 'L' | 'R', kind: Kind): string =>
  kind === 'centerline' ? '' : side === 'L' ? ' left' : ' right';

function end(error: number): string {
  const text = size(error);
  return `${Number(text) === 0 ? '' : error < 0 ? '−' : '+'}${text} mm`;
}

/** `K left`; a centre pin has no side. */
export const heightName = (
  { point, side }: { point: string | null; side: 'L' | 'R' | null },
  kind: Kind,
): string =>
  kind === 'centerline' || side === null
    ? (point ?? '?')
    : `${point ?? '?'} ${side === 'L' ? 'left' : 'right'}`;

/** The height away from the zero stations that a hypothesis leaves most of to chance, in multiples of its scatter. */
export function leastFitting(bars: readonly Bar[]): Bar | null {
  let worst: Bar | null = null;
  let most = 0;
  for (const bar of bars) {
    if (bar.zero) continue;
    const off = Math.abs(bar.measured - bar.expected) / bar.scatter;
    if (off > most) [worst, most] = [bar, off];
  }
  return worst;
}

/** What a hypothesis leaves to chance where it fits worst. */
export function leftOverWords(bars: readonly Bar[], kind: Kind = 'height'): string {
  const worst = leastFitting(bars);
  if (worst === null) return 'No height was read beside the zero stations.';
  const left = worst.measured - worst.expected;
  return `It fits worst at ${heightName(worst, kind)}: ${end(worst.measured)} read, ${end(worst.expected)} expected, which leaves ${end(left)} to ordinary scatter (one standard deviation there is ${size(worst.scatter)} mm).`;
}

/** How often likelier, in words that do not claim more than two figures. */
export function times(difference: number): string {
  const ratio = Math.exp(Math.abs(difference));
  if (ratio < 1.095) return 'about equally likely';
  if (ratio > 1e6) return 'more than a million times likelier';
  const rounded = ratio < 10 ? ratio.toFixed(1) : Number(ratio.toPrecision(2)).toLocaleString('en-GB');
  return `${rounded} times likelier`;
}

/** What one piece of evidence is called. */
export function pieceName(
  { kind, point, side }: Pick<Weighed, 'kind' | 'point' | 'side'>,
  of: Kind = 'height',
): string {
  switch (kind) {
    case 'history':
      return 'This shop’s history';
    case 'height':
      return of === 'height' ? `Height ${heightName({ point, side }, of)}` : `Centre pin ${point ?? '?'}`;
    case 'length':
      return `Length ${(point ?? '?').replace('-', '–')}`;
    case 'recheck':
      return 'Re-checks on record';
  }
}

/**
 * The weighing in sentences: how the two stand, what speaks most for each.
 * @param names what the two hypotheses are called on the page, such as A and B.
 */
export function weighingWords(
  weighing: readonly Weighed[],
  names: readonly [string, string],
  kind: Kind = 'height',
): string[] {
  const last = weighing.at(-1);
  if (!last) return [];
  const [first, second] = names;
  const sentences = [
    last.sum >= WORTH_SAYING
      ? `All together ${first} is ${times(last.sum)} than ${second}.`
      : `All together ${first} and ${second} are about equally likely.`,
  ];
  const history = weighing.find((one) => one.kind === 'history');
  if (history && Math.abs(history.difference) >= WORTH_SAYING)
    sentences.push(
      `Before any reading ${history.difference > 0 ? `${first} was ${times(history.difference)} than ${second}` : `${second} was ${times(history.difference)} than ${first}`}, by how often the one and the other happen in this shop.`,
    );
  const readings = weighing.filter((one) => one.kind !== 'history');
  for (const [name, sign] of [
    [first, 1],
    [second, -1],
  ] as const) {
    const strongest = readings.reduce<Weighed | null>(
      (best, one) =>
        sign * one.difference > Math.max(WORTH_SAYING, sign * (best?.difference ?? 0)) ? one : best,
      null,
    );
    sentences.push(
      strongest === null
        ? `Nothing that was read speaks clearly for ${name}.`
        : `What speaks most for ${name} is ${lowerFirst(pieceName(strongest, kind))}${strongest.measured === null ? '' : ` (${end(strongest.measured)})`}: ${times(strongest.difference)} if ${name} holds.`,
    );
  }
  return sentences;
}

const lowerFirst = (text: string): string => `${text[0]?.toLowerCase() ?? ''}${text.slice(1)}`;

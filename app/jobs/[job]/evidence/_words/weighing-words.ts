import { decimal, grouped, signedMillimetres } from '@/app/_words/numbers';
import { words } from '@/app/_words/words';
import type { Kind, Weighed } from '@/lib/assess/evidence';
import { heightName } from './left-over-words';

/** Evidence of less than a factor of 1.2 is not put in a sentence; the table has it. */
const WORTH_SAYING = Math.log(1.2);

/** How often likelier, in words that do not claim more than two figures. */
export function times(difference: number): string {
  const t = words('evidence');
  const ratio = Math.exp(Math.abs(difference));
  if (ratio < 1.095) return t('words.times.equal');
  if (ratio > 1e6) return t('words.times.million');
  return t('words.times.some', {
    ratio: ratio < 10 ? decimal(ratio, 1) : grouped(Number(ratio.toPrecision(2))),
  });
}

/** What one piece of evidence is called, by itself or within a sentence. */
export function pieceName(
  { kind, point, side }: Pick<Weighed, 'kind' | 'point' | 'side'>,
  of: Kind = 'height',
  inSentence = false,
): string {
  const what = kind === 'height' && of === 'centerline' ? 'pin' : kind;
  const name = kind === 'length' ? (point ?? '?').replace('-', '–') : heightName({ point, side }, of);
  return words('evidence')(`words.pieces.${what}`, { name, place: inSentence ? 'within' : 'alone' });
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
  const t = words('evidence');
  const last = weighing.at(-1);
  if (!last) return [];
  const [first, second] = names;
  const sentences = [
    last.sum >= WORTH_SAYING
      ? t('words.together.likelier', { first, second, times: times(last.sum) })
      : t('words.together.equal', { first, second }),
  ];
  const history = weighing.find((one) => one.kind === 'history');
  if (history && Math.abs(history.difference) >= WORTH_SAYING) {
    const [likelier, other] = history.difference > 0 ? [first, second] : [second, first];
    sentences.push(t('words.before', { first: likelier, second: other, times: times(history.difference) }));
  }
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
    sentences.push(strongest === null ? t('words.nothingFor', { name }) : speaksFor(name, strongest, kind));
  }
  return sentences;
}

function speaksFor(name: string, strongest: Weighed, kind: Kind): string {
  const said = { name, piece: pieceName(strongest, kind, true), times: times(strongest.difference) };
  return strongest.measured === null
    ? words('evidence')('words.most', said)
    : words('evidence')('words.mostRead', { ...said, read: signedMillimetres(strongest.measured) });
}

import { LastUsed } from '@/lib/memory';
import { packedAlone, type PagePart } from './page-part';
import { apartAtPieces } from './piece-place';

/** Characters and bytes of all pieces that are kept. */
const MOST = 32_000_000;

/** Characters; less is packed with what is around it. */
const SHORT = 1_500;

/** By their markup; null of one that came once. */
const kept = new LastUsed<PagePart | null>(
  MOST,
  (part, markup) => 2 * markup.length + (part === null ? 0 : part.plain.length + (part.packed?.length ?? 0)),
);

/** A page with its pieces put in. */
export const partsOfPage = (page: Buffer, pieces: readonly string[]): PagePart[] =>
  apartAtPieces(page).map((part) =>
    typeof part === 'number' ? partOf(pieces[part] ?? '') : { plain: part, packed: null },
  );

/**
 * The same drawing comes on page after page (app/_look/still): from the second time on it is at hand as bytes, packed.
 * To pack by itself what comes once would only take longer.
 */
function partOf(markup: string): PagePart {
  const known = markup.length < SHORT ? undefined : kept.get(markup);
  if (known != null) return known;
  const plain = Buffer.from(markup);
  const part = { plain, packed: known === null ? packedAlone(plain) : null };
  if (markup.length >= SHORT) kept.set(markup, known === null ? part : null);
  return part;
}

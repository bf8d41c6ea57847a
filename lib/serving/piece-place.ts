const [BEGIN, END] = ['<!--piece ', '-->'];

/**
 * What the framework draws where a piece of markup belongs (app/_look/still): it then passes on a few letters, and the
 * markup is put in once the page is whole. Nothing else on a page reads like it, since React lets no `<` through.
 */
export const pieceInPlace = (piece: number): string => `${BEGIN}${piece}${END}`;

/** Takes a page apart at its pieces: what stands between them as bytes, each piece by its number. */
export function apartAtPieces(page: Buffer): (Buffer | number)[] {
  const parts: (Buffer | number)[] = [];
  let start = 0;
  for (let at = page.indexOf(BEGIN); at !== -1; at = page.indexOf(BEGIN, start)) {
    const end = page.indexOf(END, at);
    parts.push(page.subarray(start, at), Number(page.toString('latin1', at + BEGIN.length, end)));
    start = end + END.length;
  }
  return [...parts, page.subarray(start)];
}

import type { Fonts, Run, Weight, Word } from './fonts';

/** A stretch of text of one weight. */
export interface Piece {
  text: string;
  weight: Weight;
}

/** A line as it is written, in points; a space at its end is written, so that whoever takes the text out finds it. */
export interface Line {
  runs: Run[];
  width: number;
}

/** Where a line may end: at spaces that may break, and after a hyphen within a word. */
const PLACES = /(?<= )|(?<=[\p{L}\d]{3}[-–])(?=\p{L})/u;

/**
 * Text in lines no wider than `width`, in points. A word that is wider by itself is cut where it must be; a line break in
 * the text begins a new line.
 */
export function linesOf(pieces: readonly Piece[], width: number, size: number, fonts: Fonts): Line[] {
  const lines: Line[] = [];
  let line: Line = { runs: [], width: 0 };
  let bare = 0;
  const end = () => {
    lines.push({ ...line, width: bare });
    line = { runs: [], width: 0 };
    bare = 0;
  };
  const put = (word: Word) => {
    bare = line.width + word.bare * size;
    for (const run of word.runs) {
      const last = line.runs.at(-1);
      line.width += run.width * size;
      if (last?.font === run.font) {
        last.text += run.text;
        last.width += run.width * size;
      } else line.runs.push({ ...run, width: run.width * size });
    }
  };
  const fits = (word: Word) => line.width + word.bare * size <= width;
  for (const { text, weight } of pieces) {
    for (const [index, part] of text.split('\n').entries()) {
      if (index > 0) end();
      for (const one of part.split(PLACES)) {
        if (one === '') continue;
        const word = fonts.word(one, weight);
        if (line.width > 0 && !fits(word)) end();
        if (fits(word)) {
          put(word);
          continue;
        }
        for (const character of Array.from(one)) {
          const letter = fonts.word(character, weight);
          if (line.width > 0 && !fits(letter)) end();
          put(letter);
        }
      }
    }
  }
  if (line.runs.length > 0 || lines.length === 0) end();
  return lines;
}

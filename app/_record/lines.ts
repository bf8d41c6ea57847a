import type { Fonts, Run, Weight } from './fonts';

/** A stretch of text of one weight. */
export interface Piece {
  text: string;
  weight: Weight;
}

export interface Line {
  runs: (Run & { width: number })[];
  width: number;
}

interface Word {
  runs: (Run & { width: number })[];
  width: number;
}

/** Where a line may end: at spaces that may break, and after a hyphen within a word. */
const WORDS = /(?<= )|(?<=[\p{L}\d]{2}[-–])(?=\p{L})/u;

/**
 * Text in lines no wider than `width`, in points. A word that is wider by itself is cut where it must be; a line break in
 * the text begins a new line.
 */
export function linesOf(pieces: readonly Piece[], width: number, size: number, fonts: Fonts): Line[] {
  const lines: Line[] = [];
  let line: Line = { runs: [], width: 0 };
  const end = () => {
    lines.push(line);
    line = { runs: [], width: 0 };
  };
  const put = (runs: Word['runs']) => {
    for (const run of runs) {
      const last = line.runs.at(-1);
      line.width += run.width;
      if (last?.font === run.font) {
        last.text += run.text;
        last.width += run.width;
      } else line.runs.push({ ...run });
    }
  };
  for (const word of wordsOf(pieces, size, fonts)) {
    if (word === 'break') {
      end();
      continue;
    }
    if (line.width > 0 && line.width + word.width > width) end();
    if (word.width <= width) {
      put(word.runs);
      continue;
    }
    for (const run of word.runs)
      for (const character of run.text) {
        const one = { font: run.font, text: character };
        const wide = fonts.width(one, size);
        if (line.width > 0 && line.width + wide > width) end();
        put([{ ...one, width: wide }]);
      }
  }
  if (line.runs.length > 0 || lines.length === 0) lines.push(line);
  return lines.map((one) => trimmed(one, size, fonts));
}

function wordsOf(pieces: readonly Piece[], size: number, fonts: Fonts): (Word | 'break')[] {
  return pieces.flatMap(({ text, weight }) =>
    text.split('\n').flatMap((part, index): (Word | 'break')[] => [
      ...(index > 0 ? (['break'] as const) : []),
      ...part
        .split(WORDS)
        .filter((word) => word !== '')
        .map((word): Word => {
          const runs = fonts.runs(word, weight).map((run) => ({ ...run, width: fonts.width(run, size) }));
          return { runs, width: widthWithoutSpace(runs, size, fonts) };
        }),
    ]),
  );
}

/** A space at the end of a line takes no room. */
function widthWithoutSpace(runs: Word['runs'], size: number, fonts: Fonts): number {
  return runs.reduce(
    (sum, run, index) =>
      sum +
      (index === runs.length - 1 && run.text.endsWith(' ')
        ? fonts.width({ font: run.font, text: run.text.trimEnd() }, size)
        : run.width),
    0,
  );
}

/** The space that the break of a line swallows is written, so that whoever takes the text out finds it; it has no width. */
function trimmed(line: Line, size: number, fonts: Fonts): Line {
  const last = line.runs.at(-1);
  if (last?.text.endsWith(' ') !== true) return line;
  const width = fonts.width({ font: last.font, text: last.text.trimEnd() }, size);
  return { ...line, width: line.width - last.width + width };
}

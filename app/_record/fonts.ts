import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

/** The alphabets that the font comes in, the likeliest first; each is a file of its own. */
const ALPHABETS = ['latin', 'latin-ext', 'greek', 'cyrillic'] as const;
const WEIGHTS = { plain: 400, strong: 600 } as const;

export type Weight = keyof typeof WEIGHTS;

/** What the font has in none of its alphabets, in characters that it has. */
const INSTEAD: Record<string, string> = {
  '\u202f': '\u00a0',
  '\u2011': '-',
  '\u2264': '<=',
  '\u2265': '>=',
  '\u2192': '->',
  '\u2190': '<-',
};
const UNKNOWN = '?';

const FOLDER = join(
  /* turbopackIgnore: true */ process.cwd(),
  ...['node_modules', '@fontsource', 'source-sans-3', 'files'],
);

const files = new Map<string, Buffer>();

function fileOf(alphabet: string, weight: Weight): Buffer {
  const name = `source-sans-3-${alphabet}-${WEIGHTS[weight]}-normal.woff`;
  const known = files.get(name);
  if (known !== undefined) return known;
  const read = readFileSync(join(FOLDER, name));
  files.set(name, read);
  return read;
}

/** The font in use as the PDF library holds it; its published types leave it out. */
const inUse = z.object({
  _font: z.object({
    font: z.custom<{ hasGlyphForCodePoint: (code: number) => boolean }>(
      (font) => typeof font === 'object' && font !== null && 'hasGlyphForCodePoint' in font,
    ),
  }),
});

/** A stretch of text that one file of the font can write. */
export interface Run {
  font: string;
  text: string;
}

export interface Fonts {
  /** The text in stretches, each with its font; what no font has is written otherwise. */
  runs: (text: string, weight: Weight) => Run[];
  width: (run: Run, size: number) => number;
}

/** The fonts of one document; only those that it uses are read and embedded. */
export function fontsOf(pdf: PDFKit.PDFDocument): Fonts {
  const ready = new Map<string, (code: number) => boolean>();
  const holds = (name: string, alphabet: string, weight: Weight, code: number): boolean => {
    let has = ready.get(name);
    if (has === undefined) {
      pdf.registerFont(name, fileOf(alphabet, weight));
      pdf.font(name);
      const { font } = inUse.parse(pdf)._font;
      has = (asked) => font.hasGlyphForCodePoint(asked);
      ready.set(name, has);
    }
    return has(code);
  };
  const fontFor = (character: string, weight: Weight): string | null => {
    const code = character.codePointAt(0) ?? 0;
    for (const alphabet of ALPHABETS) {
      const name = `${alphabet} ${weight}`;
      if (holds(name, alphabet, weight, code)) return name;
    }
    return null;
  };
  const known = new Map<string, Run[]>();
  const written = (character: string, weight: Weight): Run[] => {
    const key = `${weight} ${character}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const font = fontFor(character, weight);
    const runs =
      font === null
        ? Array.from(INSTEAD[character] ?? UNKNOWN, (other) => ({ font: `latin ${weight}`, text: other }))
        : [{ font, text: character }];
    known.set(key, runs);
    return runs;
  };
  return {
    runs: (text, weight) => {
      const runs: Run[] = [];
      for (const run of Array.from(text.normalize('NFC')).flatMap((character) =>
        written(character, weight),
      )) {
        const last = runs.at(-1);
        if (last?.font === run.font) last.text += run.text;
        else runs.push({ ...run });
      }
      return runs;
    },
    width: ({ font, text }, size) => pdf.font(font).fontSize(size).widthOfString(text),
  };
}

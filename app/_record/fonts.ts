import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { unpackWoff } from './woff';

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

const unpacked = new Map<string, Buffer>();

function fontFile(alphabet: string, weight: Weight): Buffer {
  const name = `source-sans-3-${alphabet}-${WEIGHTS[weight]}-normal.woff`;
  const font = unpacked.get(name) ?? unpackWoff(readFileSync(join(FOLDER, name)));
  unpacked.set(name, font);
  return font;
}

/** The font in use as the PDF library has read it; its published types leave that out. */
const inUse = z.object({
  _font: z.object({
    font: z.custom<{ hasGlyphForCodePoint: (code: number) => boolean }>(
      (font) => typeof font === 'object' && font !== null && 'hasGlyphForCodePoint' in font,
    ),
  }),
});

/** A stretch of text that one file of the font can write, with its width at the size of one point. */
export interface Run {
  font: string;
  text: string;
  width: number;
}

/** A word with the space after it, which takes no room where a line ends (`bare`). */
export interface Word {
  runs: readonly Run[];
  width: number;
  bare: number;
}

export interface Fonts {
  word: (text: string, weight: Weight) => Word;
}

/** The fonts of one document; only those that it uses are read and embedded. What no font has is written otherwise. */
export function fontsOf(pdf: PDFKit.PDFDocument): Fonts {
  const ready = new Map<string, (code: number) => boolean>();
  const words = new Map<string, Word>();
  const characters = new Map<string, { font: string; text: string }>();

  const holds = (name: string, alphabet: string, weight: Weight): ((code: number) => boolean) => {
    const known = ready.get(name);
    if (known !== undefined) return known;
    pdf.registerFont(name, fontFile(alphabet, weight));
    pdf.font(name);
    const { font } = inUse.parse(pdf)._font;
    const has = (code: number) => font.hasGlyphForCodePoint(code);
    ready.set(name, has);
    return has;
  };
  const written = (character: string, weight: Weight): { font: string; text: string } => {
    const code = character.codePointAt(0) ?? 0;
    for (const alphabet of ALPHABETS) {
      const name = `${alphabet} ${weight}`;
      if (holds(name, alphabet, weight)(code)) return { font: name, text: character };
    }
    return { font: `latin ${weight}`, text: INSTEAD[character] ?? UNKNOWN };
  };
  const writtenOnce = (character: string, weight: Weight) => {
    const key = weight + character;
    const one = characters.get(key) ?? written(character, weight);
    characters.set(key, one);
    return one;
  };
  const width = (font: string, text: string) => pdf.font(font).fontSize(1000).widthOfString(text) / 1000;
  const make = (text: string, weight: Weight): Word => {
    const parts: { font: string; text: string }[] = [];
    for (const character of Array.from(text.normalize('NFC'))) {
      const one = writtenOnce(character, weight);
      const last = parts.at(-1);
      if (last?.font === one.font) last.text += one.text;
      else parts.push({ ...one });
    }
    const runs = parts.map((part) => ({ ...part, width: width(part.font, part.text) }));
    const all = runs.reduce((sum, run) => sum + run.width, 0);
    const last = runs.at(-1);
    const space = last?.text.endsWith(' ') === true ? last.width - width(last.font, last.text.trimEnd()) : 0;
    return { runs, width: all, bare: all - space };
  };
  return {
    word: (text, weight) => {
      const key = weight + text;
      const known = words.get(key) ?? make(text, weight);
      words.set(key, known);
      return known;
    },
  };
}

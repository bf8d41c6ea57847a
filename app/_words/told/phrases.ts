/**
 * A sentence with named gaps, `Hang the gauge at {place} again.`, and what it is in another language. A gap whose name
 * begins with `word` takes one word only; one that begins with `same` is the same in all languages, as what stands in
 * a file is.
 */
export interface Phrase {
  /** The words before the first gap: most phrases are ruled out by them. */
  start: string;
  pattern: RegExp;
  gaps: string[];
  translation: string;
}

const GAP = /\{(\w+)\}/g;
const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

export function phraseOf(template: string, translation: string): Phrase {
  const gaps: string[] = [];
  let pattern = '';
  let end = 0;
  for (const found of template.matchAll(GAP)) {
    const name = found[1] ?? '';
    pattern += `${escaped(template.slice(end, found.index))}${name.startsWith('word') ? '(\\S+)' : '((?:(?![.] ).)+?)'}`;
    gaps.push(name);
    end = found.index + found[0].length;
  }
  pattern += escaped(template.slice(end));
  const start = template.split('{', 1)[0] ?? '';
  return { start, pattern: new RegExp(`^${pattern}$`, 's'), gaps, translation };
}

/** Literal text in a template: of two that fit, the one that says more is meant. */
const weight = (template: string): number => template.replace(GAP, '').length;

/** A book of phrases, those that say most first. Whole texts without a gap are found by themselves. */
export class PhraseBook {
  readonly #whole = new Map<string, string>();
  readonly #phrases: Phrase[];

  constructor(book: Readonly<Record<string, string>>) {
    const withGaps: [string, string][] = [];
    for (const [template, translation] of Object.entries(book)) {
      if (template.includes('{')) withGaps.push([template, translation]);
      else this.#whole.set(template, translation);
    }
    withGaps.sort(([a], [b]) => weight(b) - weight(a));
    this.#phrases = withGaps.map(([template, translation]) => phraseOf(template, translation));
  }

  /** @param ofGap what a gap's text becomes. */
  find(text: string, ofGap: (text: string) => string): string | null {
    const whole = this.#whole.get(text);
    if (whole !== undefined) return whole;
    for (const { start, pattern, gaps, translation } of this.#phrases) {
      if (!text.startsWith(start)) continue;
      const match = pattern.exec(text);
      if (match === null) continue;
      const values = new Map(
        gaps.map((gap, at) => {
          const held = match[at + 1] ?? '';
          return [gap, gap.startsWith('same') ? held : ofGap(held)];
        }),
      );
      return translation.replace(GAP, (_, gap: string) => values.get(gap) ?? '');
    }
    return null;
  }
}

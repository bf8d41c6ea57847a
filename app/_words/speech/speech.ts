export const LANGUAGES = ['en', 'de'] as const;
export const UNITS = ['mm', 'in'] as const;

export type Language = (typeof LANGUAGES)[number];
/** Of what is typed and shown; everything is stored and computed in millimetres. */
export type Units = (typeof UNITS)[number];

/** How a reader is spoken to. */
export interface Speech {
  language: Language;
  units: Units;
}

export const PLAIN: Speech = { language: 'en', units: 'mm' };

/** The known choice that a text names; undefined for anything else. Plain, since every browser reads this file. */
const known = <Choice extends string>(choices: readonly Choice[], text: unknown): Choice | undefined =>
  choices.find((choice) => choice === text);

export const languageFrom = (text: unknown): Language | undefined => known(LANGUAGES, text);
export const unitsFrom = (text: unknown): Units | undefined => known(UNITS, text);

/** The reader's choices as the cookies state them; anything else is English and millimetres. */
export const speechFrom = (language: unknown, units: unknown): Speech => ({
  language: languageFrom(language) ?? PLAIN.language,
  units: unitsFrom(units) ?? PLAIN.units,
});

/** The locale by which numbers, dates and plurals are written. */
export const localeOf = ({ language }: Pick<Speech, 'language'>): string =>
  ({ en: 'en-GB', de: 'de-DE' })[language];

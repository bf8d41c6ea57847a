import { z } from 'zod';

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

export const languageSchema = z.enum(LANGUAGES);
export const unitsSchema = z.enum(UNITS);

/** The reader's choices as the cookies state them; anything else is English and millimetres. */
export const speechFrom = (language: unknown, units: unknown): Speech => ({
  language: languageSchema.catch(PLAIN.language).parse(language),
  units: unitsSchema.catch(PLAIN.units).parse(units),
});

/** The locale by which numbers, dates and plurals are written. */
export const localeOf = ({ language }: Pick<Speech, 'language'>): string =>
  ({ en: 'en-GB', de: 'de-DE' })[language];

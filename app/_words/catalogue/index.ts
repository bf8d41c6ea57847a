import type { Language } from '@/app/_words/speech';
import de from './de';
import en from './en';

/** Every word that is shown, by language. English is complete by definition: the others have its shape. */
export const catalogue: Record<Language, typeof en> = { en, de };

export type Catalogue = typeof en;
export type Part = keyof Catalogue;

declare module 'use-intl/core' {
  interface AppConfig {
    Messages: Catalogue;
  }
}

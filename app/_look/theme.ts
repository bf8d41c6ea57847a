import { z } from 'zod';

export const THEMES = ['system', 'light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];

const schema = z.enum(THEMES).catch('system');

/** The reader's choice as the cookie or the form states it; anything else follows the device. */
export function themeFrom(value: unknown): Theme {
  return schema.parse(value);
}

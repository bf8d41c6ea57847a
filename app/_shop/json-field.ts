import { z } from 'zod';

/** A field of a form that holds several values as JSON; what it holds is for the schema after it to say. */
export const jsonField = (most: number) =>
  z
    .string()
    .max(most)
    .transform((text, context): unknown => {
      try {
        return JSON.parse(text);
      } catch {
        context.addIssue({ code: 'custom', message: 'not JSON' });
        return z.NEVER;
      }
    });

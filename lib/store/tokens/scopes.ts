/** What a token may be good for. */
export const TOKEN_SCOPES = [
  'measurements:write',
  'measurements:read',
  'reports:read',
  'metrics:read',
] as const;
export type TokenScope = (typeof TOKEN_SCOPES)[number];

/** As they are kept: words apart by spaces. One that this program does not know lets in nowhere. */
export const scopesOf = (kept: string): TokenScope[] =>
  kept.split(' ').filter((word): word is TokenScope => (TOKEN_SCOPES as readonly string[]).includes(word));

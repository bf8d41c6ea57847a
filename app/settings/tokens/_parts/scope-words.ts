import { words } from '@/app/_words/words';
import type { TokenScope } from '@/lib/access';

const KEYS = {
  'measurements:write': 'tokens.scopes.load',
  'measurements:read': 'tokens.scopes.fetch',
  'reports:read': 'tokens.scopes.reports',
  'metrics:read': 'tokens.scopes.watch',
} as const satisfies Record<TokenScope, string>;

/** What a token is for, in words. */
export const scopeWords = (scope: TokenScope): string => words('settings')(KEYS[scope]);

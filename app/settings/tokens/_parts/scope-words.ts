import type { TokenScope } from '@/lib/access';

/** What a token is for, in words. */
export const SCOPE_WORDS: Record<TokenScope, string> = {
  'measurements:write': 'load measurements',
  'measurements:read': 'fetch measurements',
  'reports:read': 'fetch reports and jobs',
  'metrics:read': 'watch the program (metrics)',
};

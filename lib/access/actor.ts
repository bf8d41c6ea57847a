import type { Viewer } from '@/lib/identity';
import type { Actor } from '@/lib/store';

/** The viewer, as the trace names who did something on a page. */
export const actorOf = (viewer: Viewer): Actor => ({ person: viewer.code, via: 'page' });

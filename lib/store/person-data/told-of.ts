import type { Json } from '@/lib/store/types';

/**
 * The parts of a document that are about somebody: every object or list with the code as one of its values, and
 * every value that is kept under the code. Not their parts again.
 */
export function toldOf(json: Json, code: string): Json[] {
  if (json === null || typeof json !== 'object') return [];
  if (Object.values(json).includes(code)) return [json];
  if (Array.isArray(json)) return json.flatMap((one) => toldOf(one, code));
  return Object.entries(json).flatMap(([key, value]) => (key === code ? [value] : toldOf(value, code)));
}

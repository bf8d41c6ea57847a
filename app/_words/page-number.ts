import { z } from 'zod';
import { firstOf, type Query } from './address';

const schema = z.coerce.number().int().min(1).max(1_000_000).catch(1);

/** The page of a list that the address asks for; the first one where it asks for none or for nonsense. */
export function pageNumber(query: Query): number {
  return schema.parse(firstOf(query, 'page') ?? 1);
}

import { databaseUrl, type EngineName } from '@/lib/store/connection/database-url';
import type { Dialect } from './dialect';
import { postgresql } from './postgresql';
import { sqlite } from './sqlite';

export { JsonCell, type Cell, type Dialect } from './dialect';

export const dialectOf = (engine: EngineName): Dialect => (engine === 'sqlite' ? sqlite : postgresql);

/** Of the database that `DATABASE_URL` names. */
export const dialect = (): Dialect => dialectOf(databaseUrl().engine);

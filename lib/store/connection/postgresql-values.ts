import pg, { type CustomTypesConfig } from 'pg';
import { parsedOnce } from './parsed-once';

type Read = (text: string) => unknown;

const { builtins } = pg.types;

/** What the driver would read otherwise than Prisma does. Times are kept without a zone, and are meant as UTC. */
const OTHERWISE: ReadonlyMap<number, Read> = new Map<number, Read>([
  [builtins.TIMESTAMP, (text) => new Date(`${text.replace(' ', 'T')}Z`)],
  [builtins.INT8, BigInt],
  [builtins.JSON, parsedOnce],
  [builtins.JSONB, parsedOnce],
]);

/** How cells of a type are read, so that times, truths, JSON and counts are as Prisma gives them. */
export const READING: CustomTypesConfig = {
  getTypeParser: (...[type]: Parameters<typeof pg.types.getTypeParser>): Read =>
    OTHERWISE.get(type) ?? (pg.types.getTypeParser(type, 'text') as Read),
};

/** The driver would write a time by the clock of this machine. */
export const bound = (value: unknown): unknown => (value instanceof Date ? value.toISOString() : value);

import { randomBytes } from 'node:crypto';
import { PrismaPg } from '@prisma/adapter-pg';

/** Connections that one process holds at most; the server shares its own among all processes. */
const CONNECTIONS = 8;

/** All connections of this process, and of no other, go by this name: see `sql/without-references.ts`. */
const NAME = `rehang ${process.pid} ${randomBytes(4).toString('hex')}`;

/** The adapter of a PostgreSQL server. What is acknowledged is on the server's disk, by its own default. */
export const postgresqlAdapter = (url: string): PrismaPg =>
  new PrismaPg({ connectionString: url, max: CONNECTIONS, application_name: NAME });

import { PrismaPg } from '@prisma/adapter-pg';

/** Connections that one process holds at most; the server shares its own among all processes. */
const CONNECTIONS = 8;

/** The adapter of a PostgreSQL server. What is acknowledged is on the server's disk, by its own default. */
export const postgresqlAdapter = (url: string): PrismaPg =>
  new PrismaPg({ connectionString: url, max: CONNECTIONS, application_name: 'rehang' });

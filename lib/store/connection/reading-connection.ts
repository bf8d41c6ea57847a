import type { SqlDriverAdapter } from '@prisma/driver-adapter-utils';
import type Database from 'better-sqlite3';
import { PreparedStatements, type Prepared } from './prepared';

interface Open {
  adapter: SqlDriverAdapter;
  database: Database.Database;
  prepared: PreparedStatements;
}

/** The connection to a SQLite file that reads. It can be closed for a while, and opened again. */
export class ReadingConnection {
  #open: Open | null = null;
  #connections = 0;

  /** @param connect gives a connection of its own, ready to read. */
  constructor(private readonly connect: () => Promise<Pick<Open, 'adapter' | 'database'>>) {}

  async open(): Promise<void> {
    const { adapter, database } = await this.connect();
    this.#open = { adapter, database, prepared: new PreparedStatements(database) };
    this.#connections += 1;
  }

  async close(): Promise<void> {
    const open = this.#open;
    this.#open = null;
    await open?.adapter.dispose();
  }

  get adapter(): SqlDriverAdapter {
    return this.#required().adapter;
  }

  prepared(sql: string): Prepared {
    return this.#required().prepared.of(sql);
  }

  /** Another than before where anything was committed since; each connection counts from the beginning. */
  get version(): string {
    const { statement } = this.prepared('PRAGMA data_version');
    return `${this.#connections} ${String(statement.get()?.data_version)}`;
  }

  #required(): Open {
    if (this.#open === null)
      throw new Error('The database is not open, or a file is being stored that nothing is asked beside.');
    return this.#open;
  }
}

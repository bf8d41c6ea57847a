import { PrismaPg } from '@prisma/adapter-pg';
import type { SqlDriverAdapter } from '@prisma/driver-adapter-utils';
import pg from 'pg';
import { HISTORY, onRecord, type MigrationKept } from './history';
import { migrationOf } from './migration-list';

/** Any number that nothing else in the database locks. */
const LOCK = 7_242_640;

/**
 * The PostgreSQL adapter for migrations: each is sent as one script, which the server runs whole or not at all, and
 * which puts on record that it is finished: killed before the engine does, it would apply the migration again. And one
 * process migrates at a time.
 */
export class PostgresqlMigrationAdapter extends PrismaPg {
  readonly #turn: pg.Client;
  readonly #connections: SqlDriverAdapter[] = [];
  #waited: Promise<unknown> | null = null;

  constructor(url: string) {
    const connection = { connectionString: url, application_name: 'rehang migration' };
    super({ ...connection, max: 1 });
    this.#turn = new pg.Client(connection);
  }

  /** Waits for its turn. @throws whatever keeps the server from being reached, as it is: the engine would hide it. */
  async ready(): Promise<void> {
    this.#waited ??= this.#turn.connect().then(() => this.#turn.query('SELECT pg_advisory_lock($1)', [LOCK]));
    await this.#waited;
  }

  override async connect() {
    await this.ready();
    const adapter = await super.connect();
    this.#connections.push(adapter);
    adapter.executeScript = async (script) => {
      const name = migrationOf('postgresql', script);
      await adapter.underlyingDriver().query(name === undefined ? script : `${script}\n;\n${onRecord(name)}`);
    };
    return adapter;
  }

  async history(): Promise<MigrationKept[]> {
    await this.ready();
    const { rowCount } = await this.#turn.query(
      `SELECT 1 FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = '_prisma_migrations'`,
    );
    return rowCount === 0 ? [] : (await this.#turn.query<MigrationKept>(HISTORY)).rows;
  }

  async close(): Promise<void> {
    for (const connection of this.#connections.splice(0)) await connection.dispose();
    await this.#turn.end();
  }
}

import {
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';

/**
 * Stands in for a PostgreSQL server where two data models are compared: the schema engine only asks for
 * the server's version. Everything else is refused, so no migration can be made against a live database.
 */
export function noPostgresql(): SqlMigrationAwareDriverAdapterFactory {
  const refuse = () => Promise.reject(new Error('Comparing data models needs no PostgreSQL server.'));
  const about = { provider: 'postgres', adapterName: 'no-postgresql' } as const;
  const adapter: SqlDriverAdapter = {
    ...about,
    queryRaw: () =>
      Promise.resolve({
        columnNames: ['exists', 'version', 'numeric_version'],
        columnTypes: [ColumnTypeEnum.Boolean, ColumnTypeEnum.Text, ColumnTypeEnum.Int32],
        rows: [[true, 'PostgreSQL 16.0', 160000]],
      }),
    executeRaw: refuse,
    executeScript: refuse,
    startTransaction: refuse,
    dispose: () => Promise.resolve(),
  };
  const connect = () => Promise.resolve(adapter);
  return { ...about, connect, connectToShadowDb: connect };
}

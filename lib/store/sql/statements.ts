import type { Run } from '@/lib/store/connection/postgresql';
import type { Sqlite } from '@/lib/store/connection/sqlite';
import { Prisma } from '@/lib/store/generated/sqlite/client';
import { answer, cell } from './answer';

/**
 * Questions and changes of our own within an open transaction, in the form of Prisma's, which can do as well. Rows come
 * as `ask` gives them.
 */
export interface Statements {
  $queryRaw<Rows>(text: TemplateStringsArray, ...values: readonly unknown[]): Promise<Rows>;
  $executeRaw(text: TemplateStringsArray, ...values: readonly unknown[]): Promise<number>;
  $executeRawUnsafe(sql: string, ...values: readonly unknown[]): Promise<number>;
}

/** SQLite lives in this process: a statement that was prepared before spares Prisma's half a millisecond. */
export class StatementsInProcess implements Statements {
  constructor(private readonly sqlite: Sqlite) {}

  async $queryRaw<Rows>(text: TemplateStringsArray, ...values: readonly unknown[]): Promise<Rows> {
    const question = Prisma.sql(text, ...values);
    return (await Promise.resolve(answer(this.open(question.sql), question.values))) as Rows;
  }

  $executeRaw(text: TemplateStringsArray, ...values: readonly unknown[]): Promise<number> {
    const { sql, values: all } = Prisma.sql(text, ...values);
    return this.$executeRawUnsafe(sql, ...all);
  }

  async $executeRawUnsafe(sql: string, ...values: readonly unknown[]): Promise<number> {
    return (await Promise.resolve(this.open(sql).statement.run(...values.map(cell)))).changes;
  }

  private open(sql: string) {
    return this.sqlite.preparedToWrite(sql);
  }
}

/** A server has planned a statement that was sent before, and is spared Prisma's way to it. */
export class StatementsOnServer implements Statements {
  constructor(private readonly run: Run) {}

  async $queryRaw<Rows>(text: TemplateStringsArray, ...values: readonly unknown[]): Promise<Rows> {
    const question = Prisma.sql(text, ...values);
    return (await this.run(question.text, question.values)).rows as Rows;
  }

  $executeRaw(text: TemplateStringsArray, ...values: readonly unknown[]): Promise<number> {
    const { text: sql, values: all } = Prisma.sql(text, ...values);
    return this.$executeRawUnsafe(sql, ...all);
  }

  async $executeRawUnsafe(sql: string, ...values: readonly unknown[]): Promise<number> {
    return (await this.run(sql, values)).rowCount ?? 0;
  }
}

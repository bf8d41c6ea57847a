import type { Connection, Submittable } from 'pg';

declare module 'pg' {
  // What the driver has for whoever copies, and its types leave out.
  interface Connection {
    endCopyFrom(): void;
  }
}

/** What a message with rows begins with, before its length. */
const COPY_DATA = 'd'.charCodeAt(0);

/**
 * Sends rows into an open transaction by a statement `COPY … FROM STDIN`, in the form that it names. They are not to change
 * before they are there.
 */
export type Copy = (sql: string, rows: Uint8Array) => Promise<void>;

/** A COPY of rows to a server, as the driver takes a query: it calls what begins with `handle` as the server answers. */
export class CopyIn implements Submittable {
  /** Fulfilled once the rows are there. */
  readonly done: Promise<void>;
  #end: () => void = () => undefined;
  #fail: (error: Error) => void = () => undefined;

  constructor(
    private readonly sql: string,
    private readonly rows: Uint8Array,
  ) {
    this.done = new Promise((end, fail) => {
      this.#end = end;
      this.#fail = fail;
    });
  }

  submit(connection: Connection): void {
    connection.query(this.sql);
  }

  handleCopyInResponse(connection: Connection): void {
    const beginning = Buffer.alloc(5);
    beginning.writeUInt8(COPY_DATA);
    // The length counts itself.
    beginning.writeUInt32BE(4 + this.rows.length, 1);
    // The driver's own way copies all of them twice more.
    connection.stream.write(beginning);
    connection.stream.write(this.rows);
    connection.endCopyFrom();
  }

  handleCommandComplete(): void {
    // Another query can be sent only when the server is ready again.
  }

  handleReadyForQuery(): void {
    this.#end();
  }

  handleError(error: Error): void {
    this.#fail(error);
  }
}

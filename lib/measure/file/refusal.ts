import type { Fault } from './fault';

/** Thrown while a file is being read when nothing after it can be trusted. */
export class Refusal extends Error {
  constructor(
    message: string,
    readonly line: number | null = null,
    readonly value: string | null = null,
  ) {
    super(message);
    this.name = 'Refusal';
  }

  get fault(): Fault {
    return { line: this.line, column: null, message: this.message, value: this.value };
  }
}

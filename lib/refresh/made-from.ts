import { createHash } from 'node:crypto';
import { JOB_SHARE_FORMAT, type IsKept } from '@/lib/assess/answers';
import { fitAnswerTexts, type Json, type ShopId } from '@/lib/store';
import { asJson, type StoredFit } from './stored-fit';

/** Under which question it is kept what the answers were made from. */
export const MADE_FROM = 'made-from';

interface Kept {
  /** Of everything that they rest on beside what the shares say. */
  rest: string;
  /** Another with each change of the shares and the answers together. */
  revision: string;
  /** Of what the answers that are seldom made anew were made from. */
  seldom: Record<string, string>;
}

/** What the answers of a fit were made from: whether they can be gone on with, and which of them still hold. */
export class MadeFrom {
  readonly #rest: string;
  readonly #kept: Kept | null;
  readonly #now: Record<string, string> = {};

  private constructor(
    rest: string,
    /** As it was read. */
    readonly before: Json,
  ) {
    this.#rest = rest;
    const kept = before as unknown as Kept | null;
    this.#kept = kept?.rest === rest ? kept : null;
  }

  static async of(shop: ShopId, fit: Pick<StoredFit, 'id' | 'program'>, timeZone: string): Promise<MadeFrom> {
    const text = (await fitAnswerTexts(shop, fit.id, [MADE_FROM])).get(MADE_FROM);
    const rest = digestOf([fit.program, fit.id, JOB_SHARE_FORMAT, timeZone]);
    return new MadeFrom(rest, text === undefined ? null : (JSON.parse(text) as Json));
  }

  /** Of the answers that are kept; null where they rest on something else, or were left half done. */
  get revision(): string | null {
    return this.#kept?.revision ?? null;
  }

  readonly isKept: IsKept = (question, madeFrom) => {
    const stamp = stampOf(madeFrom);
    this.#now[question] = stamp;
    return this.#kept?.seldom[question] === stamp;
  };

  /** What is kept from now on. */
  after(revision: string): Json {
    return asJson({ rest: this.#rest, revision, seldom: this.#now } satisfies Kept);
  }
}

const stamps = new WeakMap<object, string>();

/** The same object is the same data: lists of all jobs are not written out again for each question. */
function stampOf(data: unknown): string {
  if (typeof data !== 'object' || data === null) return digestOf(data);
  const known = stamps.get(data);
  const stamp = known ?? digestOf(data);
  if (known === undefined) stamps.set(data, stamp);
  return stamp;
}

/** Of what the data say, in whatever order a database gives the fields back. */
const digestOf = (data: unknown): string =>
  createHash('sha256').update(JSON.stringify(data, inOrder)).digest('base64');

function inOrder(_: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}

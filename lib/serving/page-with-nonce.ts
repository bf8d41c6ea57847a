import type { OutgoingHttpHeaders } from 'node:http';
import { promisify } from 'node:util';
import { gunzip as gunzipped } from 'node:zlib';
import { packed, type PagePart } from './page-part';

const gunzip = promisify(gunzipped);

const NONCE = /'nonce-([^']+)'/;

/** A page apart from its nonce, which has to be another in each answer. */
export class PageWithNonce {
  private constructor(
    /** Bytes, unpacked. */
    readonly size: number,
    private readonly headers: OutgoingHttpHeaders,
    private readonly parts: readonly PagePart[],
    private readonly nonce: string | null,
  ) {}

  /**
   * @param headers as they were sent, by their names in small letters
   * @param body as it was sent
   * @param unpacked where it is known already
   * @returns null where it is packed in a way that is not known here
   */
  static async of(
    headers: OutgoingHttpHeaders,
    body: Buffer,
    unpacked?: readonly PagePart[],
  ): Promise<PageWithNonce | null> {
    const encoding = headers['content-encoding'];
    if (encoding !== undefined && encoding !== 'gzip') return null;
    const parts = unpacked ?? [{ plain: encoding === 'gzip' ? await gunzip(body) : body, packed: null }];
    const size = parts.reduce((sum, { plain }) => sum + plain.length, 0);
    const nonce = NONCE.exec(textOf(headers['content-security-policy']))?.[1] ?? null;
    return new PageWithNonce(size, headers, parts, nonce);
  }

  /** The page with another nonce, packed as it was. */
  with(nonce: string): { headers: OutgoingHttpHeaders; body: Buffer } {
    const { nonce: old, headers } = this;
    // What is packed by itself comes on many pages: it holds no nonce of one.
    const parts = this.parts.map((part) =>
      old === null || part.packed !== null ? part : { ...part, plain: exchanged(part.plain, old, nonce) },
    );
    const body =
      headers['content-encoding'] === 'gzip' ? packed(parts) : Buffer.concat(parts.map(({ plain }) => plain));
    const renamed: OutgoingHttpHeaders = { ...headers, 'content-length': body.length };
    for (const [name, value] of Object.entries(renamed))
      if (old !== null && typeof value === 'string') renamed[name] = value.replaceAll(old, nonce);
    return { headers: renamed, body };
  }
}

const textOf = (value: OutgoingHttpHeaders[string]): string => (typeof value === 'string' ? value : '');

/** Bytes with one word in place of another. */
function exchanged(bytes: Buffer, old: string, other: string): Buffer {
  const parts: Buffer[] = [];
  let start = 0;
  for (let found = bytes.indexOf(old); found !== -1; found = bytes.indexOf(old, start)) {
    parts.push(bytes.subarray(start, found), Buffer.from(other));
    start = found + old.length;
  }
  return Buffer.concat([...parts, bytes.subarray(start)]);
}

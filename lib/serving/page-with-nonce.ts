import type { OutgoingHttpHeaders } from 'node:http';
import { promisify } from 'node:util';
import { gunzip as gunzipped, gzip as gzipped } from 'node:zlib';

const gunzip = promisify(gunzipped);
const gzip = promisify(gzipped);

/** Little is gained by more, and a page that is given again should cost next to nothing. */
const LEVEL = 1;

const NONCE = /'nonce-([^']+)'/;

/** A page apart from its nonce, which has to be another in each answer. */
export class PageWithNonce {
  private constructor(
    /** Bytes, unpacked. */
    readonly size: number,
    private readonly headers: OutgoingHttpHeaders,
    private readonly parts: readonly Buffer[],
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
    unpacked?: Buffer,
  ): Promise<PageWithNonce | null> {
    const encoding = headers['content-encoding'];
    if (encoding !== undefined && encoding !== 'gzip') return null;
    const plain = unpacked ?? (encoding === 'gzip' ? await gunzip(body) : body);
    const nonce = NONCE.exec(textOf(headers['content-security-policy']))?.[1] ?? null;
    return new PageWithNonce(plain.length, headers, nonce === null ? [plain] : split(plain, nonce), nonce);
  }

  /** The page with another nonce, packed as it was. */
  async with(nonce: string): Promise<{ headers: OutgoingHttpHeaders; body: Buffer }> {
    const { nonce: old, headers, parts } = this;
    const [first = Buffer.alloc(0), ...rest] = parts;
    const plain = Buffer.concat([first, ...rest.flatMap((part) => [Buffer.from(nonce), part])]);
    const body = headers['content-encoding'] === 'gzip' ? await gzip(plain, { level: LEVEL }) : plain;
    const renamed: OutgoingHttpHeaders = { ...headers, 'content-length': body.length };
    for (const [name, value] of Object.entries(renamed))
      if (old !== null && typeof value === 'string') renamed[name] = value.replaceAll(old, nonce);
    return { headers: renamed, body };
  }
}

const textOf = (value: OutgoingHttpHeaders[string]): string => (typeof value === 'string' ? value : '');

function split(body: Buffer, at: string): Buffer[] {
  const parts: Buffer[] = [];
  let start = 0;
  for (let found = body.indexOf(at); found !== -1; found = body.indexOf(at, start)) {
    parts.push(body.subarray(start, found));
    start = found + at.length;
  }
  return [...parts, body.subarray(start)];
}

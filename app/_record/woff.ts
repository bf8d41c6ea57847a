import { inflateSync } from 'node:zlib';

const HEAD = 44;
const ENTRY = { woff: 20, sfnt: 16 } as const;

/**
 * A WOFF 1.0 file unpacked to the font that it holds (TrueType), once: read as it is, its glyphs would be unpacked anew for
 * each letter. Source: W3C WOFF File Format 1.0, sections 3 to 5.
 * @throws RangeError where it is no such file.
 */
export function unpackWoff(woff: Buffer): Buffer {
  if (woff.length < HEAD || woff.toString('latin1', 0, 4) !== 'wOFF')
    throw new RangeError('The font is no WOFF file: its first four bytes are not wOFF.');
  const tables = Array.from({ length: woff.readUInt16BE(12) }, (_, index) => {
    const at = HEAD + index * ENTRY.woff;
    const [from, packed, length] = [4, 8, 12].map((field) => woff.readUInt32BE(at + field)) as [
      number,
      number,
      number,
    ];
    const stored = woff.subarray(from, from + packed);
    return {
      tag: woff.subarray(at, at + 4),
      checksum: woff.subarray(at + 16, at + 20),
      data: packed < length ? inflateSync(stored) : stored,
    };
  });
  const head = Buffer.alloc(12 + tables.length * ENTRY.sfnt);
  woff.copy(head, 0, 4, 8);
  head.writeUInt16BE(tables.length, 4);
  const most = 2 ** Math.floor(Math.log2(tables.length));
  head.writeUInt16BE(most * 16, 6);
  head.writeUInt16BE(Math.log2(most), 8);
  head.writeUInt16BE((tables.length - most) * 16, 10);
  let offset = head.length;
  const parts = tables.flatMap(({ tag, checksum, data }, index) => {
    const at = 12 + index * ENTRY.sfnt;
    tag.copy(head, at);
    checksum.copy(head, at + 4);
    head.writeUInt32BE(offset, at + 8);
    head.writeUInt32BE(data.length, at + 12);
    const padding = Buffer.alloc((4 - (data.length % 4)) % 4);
    offset += data.length + padding.length;
    return [data, padding];
  });
  return Buffer.concat([head, ...parts]);
}

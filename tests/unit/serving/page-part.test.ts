import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { packed, packedAlone, type PagePart } from '@/lib/serving/page-part';

const plain = (text: string): PagePart => ({ plain: Buffer.from(text), packed: null });
const alone = (text: string): PagePart => ({ ...plain(text), packed: packedAlone(Buffer.from(text)) });
const long = 'Maß und Lehre, '.repeat(5_000);

describe('the parts of a page', () => {
  const pages: [name: string, parts: PagePart[]][] = [
    ['none', []],
    ['nothing', [plain(''), plain('')]],
    ['a few letters', [plain('größer')]],
    ['much that is packed together', [plain(long), plain('between'), plain(long)]],
    ['only what is packed by itself', [alone('a'), alone(long), alone('')]],
    ['a few letters between what is packed', [alone(long), plain('<p>'), alone(long), plain('</p>')]],
    ['much between what is packed', [plain(long), alone('a'), plain(long), alone(long), plain(long)]],
  ];
  it.each(pages)('are one file that anybody unpacks: %s', (_, parts) => {
    const text = parts.map((part) => part.plain.toString()).join('');
    expect(gunzipSync(packed(parts)).toString()).toBe(text);
  });

  it('that are packed are not packed again', () => {
    const part = alone(long);
    expect(packed([plain('before'), part, plain('after')]).includes(part.packed ?? '')).toBe(true);
  });
});

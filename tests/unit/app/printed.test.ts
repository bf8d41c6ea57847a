import { buffer } from 'node:stream/consumers';
import { describe, expect, it } from 'vitest';
import { pdfAnswer, pdfOf, type Block, type PrintedDocument } from '@/app/_record';
import { unpackWoff } from '@/app/_record/woff';
import { readPdf, running } from '@/tests/pdf-text';

const printed = (blocks: Block[], more: Partial<PrintedDocument> = {}): PrintedDocument => ({
  ...{ title: 'Job 4711', above: 'A shop', language: 'en-GB', at: 1_764_000_000_000, foot: 'Foot of all' },
  pageOf: (page, pages) => `Page ${page} of ${pages}`,
  blocks,
  ...more,
});

const bytesOf = (document: PrintedDocument) => buffer(pdfOf(document));

describe('a printed document', () => {
  it('tells its title and language, and marks headings, tables and cells for those who hear it', async () => {
    const raw = (
      await bytesOf(
        printed(
          [
            { kind: 'heading', level: 2, text: 'Heights' },
            {
              kind: 'table',
              caption: 'All of them',
              groups: [
                { head: '', columns: 1 },
                { head: 'Before', columns: 2 },
              ],
              columns: [
                { head: 'Point', width: 1 },
                { head: 'Read', width: 1, numeric: true },
                { head: 'Deviation', width: 1, numeric: true },
              ],
              rows: [{ cells: ['K left', '307.5', '+6.2'] }],
            },
          ],
          { language: 'de-DE' },
        ),
      )
    ).toString('latin1');
    for (const part of ['/Lang (de-DE)', '/DisplayDocTitle true', '/Marked true'])
      expect(raw.includes(part), part).toBe(true);
    for (const tag of ['Document', 'H1', 'H2', 'Table', 'Caption', 'TR', 'TH', 'TD'])
      expect(new RegExp(`/S /${tag}\\b`).test(raw), tag).toBe(true);
    expect(/\/Scope \/Column\s+\/ColSpan 2/.test(raw)).toBe(true);
    expect(raw.includes('/FontFile2')).toBe(true);
    expect(/\/BaseFont \/(Helvetica|Times)/.test(raw)).toBe(false);
  });

  it('says on every page which of how many it is, and the heads of a table again where it goes on', async () => {
    const rows = Array.from({ length: 90 }, (_, index) => ({ cells: [`P${index}`, `${index}.5`] }));
    const { pages, title } = await readPdf(
      await bytesOf(
        printed([
          {
            kind: 'table',
            caption: 'Many',
            columns: [
              { head: 'Point', width: 1 },
              { head: 'Reading', width: 1, numeric: true },
            ],
            rows,
          },
        ]),
      ),
    );
    expect(title).toBe('Job 4711');
    expect(pages.length).toBeGreaterThan(1);
    pages.forEach((page, index) => {
      expect(page).toContain(`Page ${index + 1} of ${pages.length}`);
      expect(page).toContain('Foot of all');
      expect(page).toContain('Point Reading');
    });
    for (const { cells } of rows) expect(running(pages)).toContain(cells.join(' '));
  });

  it('writes what people write: letters of other alphabets, long words, line breaks; and what no font has otherwise', async () => {
    const long = 'Karosserieinstandsetzungsverfahrensanweisung'.repeat(4);
    const { pages } = await readPdf(
      await bytesOf(
        printed([
          { kind: 'paragraph', text: 'Größe ±3, Łódź, Ωμέγα, Привет: −0.4 \u2264 x \u2192 “y” \u{1F697}' },
          { kind: 'paragraph', text: `${long} end` },
          { kind: 'list', items: [{ lead: 'One.', text: 'first\nsecond' }] },
        ]),
      ),
    );
    const text = running(pages);
    expect(text).toContain('Größe ±3,');
    expect(text.replaceAll(' ', '')).toContain('Łódź,Ωμέγα,Привет:−0.4<=x->“y”?');
    expect(text.replaceAll(' ', '')).toContain(`${long}end`);
    expect(pages[0]).toContain('first\nsecond');
  });

  it('reaches somebody who reads slowly to its end, under a name that is safe in a header', async () => {
    const document = printed(
      Array.from({ length: 200 }, (_, index): Block => ({ kind: 'paragraph', text: `Line ${index}.` })),
    );
    const answer = pdfAnswer('record "of" job\n4711/ü', document);
    expect(answer.headers.get('content-disposition')).toBe('attachment; filename="record-of-job-4711-.pdf"');
    const parts: Uint8Array[] = [];
    const reader = answer.body?.getReader();
    for (let part = await reader?.read(); part?.value !== undefined; part = await reader?.read()) {
      parts.push(part.value);
      await new Promise((resolve) => setImmediate(resolve));
    }
    const { pages } = await readPdf(Buffer.concat(parts));
    expect(running(pages)).toContain('Line 199.');
  });

  it('keeps the lines to be signed together with what is signed', async () => {
    const names = ['Name', 'Licence', 'Place', 'Signature'];
    for (const lines of [30, 38, 44]) {
      const { pages } = await readPdf(
        await bytesOf(
          printed([
            ...Array.from({ length: lines }, (): Block => ({ kind: 'paragraph', text: 'A line.' })),
            { kind: 'signing', title: 'Judgement', text: 'Who judges signs.', names },
          ]),
        ),
      );
      const page = pages.find((one) => one.includes('Judgement'));
      for (const part of ['Who judges signs.', ...names]) expect(page).toContain(part);
    }
  });
});

describe('a font file', () => {
  it('that is no WOFF is refused by name', () => {
    expect(() => unpackWoff(Buffer.from('OTTO'))).toThrow(/no WOFF file/);
  });
});

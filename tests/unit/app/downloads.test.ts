import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { csvText } from '@/app/_figures/download/csv-text';
import { dot, lineThrough, path, word } from '@/app/_figures/drawing/drawing';
import { INKS, PAPER, WORD_INK } from '@/app/_figures/drawing/inks';
import { svgText } from '@/app/_figures/drawing/svg-text';

describe('a table as CSV', () => {
  it('quotes what needs it, leaves absent numbers empty and ends lines as RFC 4180 has it', () => {
    const text = csvText({
      columns: ['sheet', 'rate'],
      rows: [
        ['Pick-up, "double"', 0.25],
        ['a', null],
      ],
    });
    expect(text).toBe('sheet,rate\r\n"Pick-up, ""double""",0.25\r\na,\r\n');
  });

  it('gives a spreadsheet no formula to run, and keeps negative numbers numbers', () => {
    const text = csvText({
      columns: ['a', 'b'],
      rows: [
        ['=HYPERLINK("x")', -1.5],
        ['@sum', 2],
      ],
    });
    expect(text).toBe('a,b\r\n"\'=HYPERLINK(""x"")",-1.5\r\n\'@sum,2\r\n');
  });
});

describe('a chart as a picture', () => {
  it('holds words that look like markup as words', () => {
    const drawing = { width: 10, height: 10, label: 'a < b', shapes: [word('<script>&', 1, 2)] };
    const text = svgText(drawing, 'By "sheet"');
    expect(text).toContain('&lt;script&gt;&amp;</text>');
    expect(text).toContain('<title>By &quot;sheet&quot;</title>');
    expect(text).toContain('<desc>a &lt; b</desc>');
    expect(text).not.toContain('<script');
  });

  it('has the light colours of the page', () => {
    const tokens = readFileSync('app/_look/tokens.css', 'utf8');
    for (const { token, light } of [...Object.values(INKS), WORD_INK, PAPER])
      expect(tokens, token).toContain(`--${token}: light-dark(${light},`);
    const text = svgText({ width: 9, height: 9, label: '', shapes: [dot('mark', 1, 1, 2)] }, 'One');
    expect(text).toContain(`stroke="${INKS.mark.light}"`);
  });

  it('is drawn to a hundredth of a unit, since no eye sees more', () => {
    const line = path('line', 'M88 207.60000000000002H-1.23456V12.5m1.2345e-7 0.005L3 4');
    expect(line).toMatchObject({ d: 'M88 207.6H-1.23V12.5m0 0.01L3 4' });
    expect(dot('dot', 1 / 3, 2 / 3, 6)).toMatchObject({ x: 0.33, y: 0.67 });
  });

  it('breaks a line where a point is missing', () => {
    expect(lineThrough([[0, 1], [2, 3], null, [4, 5.006]])).toBe('M0 1L2 3M4 5.01');
  });
});

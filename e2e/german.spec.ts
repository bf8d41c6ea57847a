import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { PAGES } from './pages';

/** Shorter runs of letters may be German too, or stand in a name. */
const LEAST = 18;

/** The words of a language as they can stand on a page: without gaps, elements and plurals. */
function runs(part: unknown): string[] {
  if (typeof part !== 'string') return Object.values(part as object).flatMap(runs);
  return part
    .split(/[{}<>#]/)
    .map((run) => run.trim())
    .filter((run) => run.length >= LEAST);
}

function catalogue(language: 'en' | 'de'): string[] {
  const folder = `app/_words/catalogue/${language}`;
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .flatMap((name) => runs(JSON.parse(readFileSync(`${folder}/${name}`, 'utf8'))));
}

/** What is read on a page or aloud: no scripts, which hold the same again. */
const textOf = (page: string): string =>
  page
    .replaceAll(/<script.*?<\/script>/gs, '')
    .replaceAll(/<[^>]*?(?:aria-label|alt)="([^"]*)"[^>]*>/g, ' $1 ')
    .replaceAll(/<[^>]+>/g, '')
    .replaceAll('&#x27;', "'")
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');

test('no page tells a German reader English words of the catalogue', async ({ page, baseURL }) => {
  const own = new Set(catalogue('de'));
  const words = [...new Set(catalogue('en'))].filter((run) => !own.has(run));
  await page.context().addCookies([{ name: 'language', value: 'de', url: baseURL ?? '' }]);
  for (const [address] of [...PAGES, ['/nowhere'] as const]) {
    const text = await (await page.request.get(address)).text();
    expect(text, address).toContain('<html lang="de"');
    const shown = textOf(text);
    expect
      .soft(
        words.filter((run) => shown.includes(run)),
        address,
      )
      .toEqual([]);
  }
});

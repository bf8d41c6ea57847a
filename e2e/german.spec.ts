import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { PAGES } from './pages';
import { SIGNED_IN } from './signed-in';

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

/**
 * Words of English sentences that German has not got. Of those that stand in a column's name, a word of the file or a
 * note that somebody wrote in English, one alone is no sentence.
 */
const FUNCTION_WORDS =
  /\b(?:the|and|of|is|are|were|not|with|this|its|has|have|been|by|for|which|who|than|but|each|setups?|readings?|gauges?|rounds?|heights?|until|because)\b/gi;
/** What somebody of the demo shop called a trial stands as it was written. */
const WRITTEN = ['Before the training of May', 'After the training of May'];
/** Lines of text with two such words, or a count in English, that nobody of the shop wrote. */
const sentencesIn = (page: string): string[] =>
  page
    .replaceAll(/<script.*?<\/script>|<style.*?<\/style>|<code.*?<\/code>/gs, '')
    .replaceAll(/<\/?(?:a|b|i|em|strong|span)\b[^>]*>|<!-- -->/g, '')
    .split(/<[^>]+>/)
    .filter((line) => !WRITTEN.includes(line.trim()))
    .filter(
      (line) => new Set(line.match(FUNCTION_WORDS)).size > 1 || /\d (?:setups?|jobs?|readings?)\b/.test(line),
    );

const meta = (page: string): string => /<meta name="description" content="([^"]*)"/.exec(page)?.[1] ?? '';

for (const role of ['manager', 'trainer', 'technician'] as const)
  test.describe(`the ${role}`, () => {
    test.use({ storageState: SIGNED_IN[role] });

    test('who reads German is told no English sentence', async ({ page, baseURL }) => {
      await page.context().addCookies([{ name: 'language', value: 'de', url: baseURL ?? '' }]);
      for (const [address] of PAGES) {
        const text = await (await page.request.get(address)).text();
        expect.soft(sentencesIn(`${text}<p>${meta(text)}</p>`), address).toEqual([]);
      }
    });
  });

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

import { readFileSync } from 'node:fs';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { readPdf, running } from '@/tests/pdf-text';
import { SIGNED_IN } from './signed-in';

/** In one line; a comma that is read aloud alone stands by itself. */
const plain = (text: string): string => text.replaceAll(/\s+/g, ' ').replaceAll(' ,', ',').trim();

/** What a row of a job's heights says: how far off, what was read, how sure, and whose setup it is. */
interface Row {
  round: string;
  counts: boolean;
  deviation: string;
  /** What is said of it: `Likely gauge`. */
  call: string;
  read: string;
  uncertainty: string;
  setup: string;
}

async function heightsOf(page: Page): Promise<Row[]> {
  const rows: Row[] = [];
  for (const section of await page.locator('section[id^="before-"], section[id^="after-"]').all()) {
    const round = (await section.getAttribute('id')) ?? '';
    const table = section.getByRole('table', { name: /^Heights/ });
    if ((await table.count()) === 0) continue;
    for (const row of await table.locator('tbody tr').all()) rows.push({ round, ...(await rowOf(row)) });
  }
  return rows;
}

async function rowOf(row: Locator): Promise<Omit<Row, 'round'>> {
  const [name = '', deviation = '', call = '', , read = '', , uncertainty = '', setup = ''] = (
    await row.locator('th, td').allInnerTexts()
  ).map(plain);
  return {
    counts: !name.includes('earlier setup'),
    deviation: /[+−]?\d+\.\d/.exec(deviation)?.[0] ?? '',
    call: /^(Neither|Undecided|Likely (gauge|body|both)|not judged)/.exec(call)?.[0] ?? '',
    ...{ read, uncertainty, setup },
  };
}

/** The record as the link of the page hands it out, and what it is called. */
async function downloaded(page: Page): Promise<{ text: string; name: string }> {
  const waiting = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Print the record (PDF)' }).click();
  const download = await waiting;
  const { pages } = await readPdf(readFileSync(await download.path()));
  return { text: running(pages), name: download.suggestedFilename() };
}

async function comparesWithPage(page: Page): Promise<string> {
  const job = plain(await page.getByRole('heading', { level: 1 }).innerText()).replace(/^Job /, '');
  const rows = await heightsOf(page);
  expect(rows.length).toBeGreaterThan(3);
  const { text, name } = await downloaded(page);
  expect(name).toBe(`record-of-job-${job}.pdf`);
  const last = (stage: string) => rows.findLast(({ round }) => round.startsWith(stage))?.round;
  for (const { round, counts, deviation, read, uncertainty, setup } of rows) {
    expect(text, `${round}, ${setup}`).toContain(`${setup} ${deviation}`);
    if (counts && [last('before'), last('after')].includes(round))
      expect(text, `${round}, ${setup}`).toContain(`${read} ${deviation} ${uncertainty}`);
  }
  expect(text).toContain('It is never a clearance of the structure.');
  expect(text).toContain('Licence or certificate, number');
  return text;
}

test('the manager’s record of a job says what the job’s page says', async ({ page }) => {
  await page.goto('/jobs?sort=job');
  await page.getByRole('table').locator('tbody').getByRole('rowheader').first().getByRole('link').click();
  await page.waitForURL(/\/jobs\/[^?]+$/);
  const text = await comparesWithPage(page);
  expect(text).toContain('by GRE');
  expect(text).not.toContain('not on this print');
});

test.describe('a technician', () => {
  test.use({ storageState: SIGNED_IN.technician });

  test('prints the own rounds of a job, the sheet of the own hand, and no letter', async ({
    page,
    request,
  }) => {
    await page.goto('/jobs?sort=job');
    await page.getByRole('table').locator('tbody').getByRole('rowheader').first().getByRole('link').click();
    await page.waitForURL(/\/jobs\/[^?]+$/);
    expect(await comparesWithPage(page)).toContain('by QUI');

    await page.goto('/technicians/QUI');
    const hand = page.getByRole('row', { name: /^Reading again / }).first();
    const [, value = '', interval = ''] = (await hand.locator('th, td').allInnerTexts()).map(plain);
    const sheet = await request.get('/technicians/QUI/sheet');
    expect(sheet.headers()['content-disposition']).toBe('attachment; filename="training-talk.pdf"');
    const { pages } = await readPdf(await sheet.body());
    expect(running(pages)).toContain(`Reading again ${value} (${interval})`);
    expect((await request.get('/rates/letter')).status()).toBe(403);
  });
});

test('the letter for a month has the numbers of the rates page', async ({ page, request }) => {
  await page.goto('/rates?by=month');
  const month = page.getByRole('table').first().locator('tbody tr').last();
  const [name = '', counted = '', rate = ''] = (await month.locator('th, td').allInnerTexts()).map(plain);
  await expect(page.getByLabel('Month of the letter').locator('option').first()).toHaveText(name);
  const { pages, title } = await readPdf(await (await request.get('/rates/letter')).body());
  expect(title).toBe(`Letter for ${name}`);
  expect(running(pages)).toContain(`${name} ${counted} ${rate}`);
  expect(pages.length).toBeLessThanOrEqual(2);
  expect((await request.get('/rates/letter?month=1999-01')).status()).toBe(404);
});

test('a job’s page goes on paper open and without what only a screen can use', async ({ page }) => {
  await page.goto('/jobs?sort=job');
  await page.getByRole('table').locator('tbody').getByRole('rowheader').first().getByRole('link').click();
  await page.waitForURL(/\/jobs\/[^?]+$/);
  const heights = await heightsOf(page);
  // The browser places every letter by itself, so blanks say nothing.
  const close = (text: string) => text.replaceAll(/\s/g, '').replaceAll('\ufb01', 'fi');
  const text = close(running((await readPdf(await page.pdf({ format: 'A4' }))).pages));
  for (const { call, deviation, read, uncertainty } of heights) {
    expect(call).not.toBe('');
    for (const said of [call, deviation, read, uncertainty]) expect(text).toContain(close(said));
  }
  expect(text).toContain(close('It is never a clearance of the structure.'));
  expect(text).toContain(close('As read, mm'));
  for (const onScreen of ['Sign out', 'Print the record', 'Light or dark'])
    expect(text).not.toContain(close(onScreen));
});

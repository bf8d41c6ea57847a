import { expect, type Page } from '@playwright/test';
import { storedSheet } from '@/seed/dimensions';
import { SHEETS } from '@/seed/sheets';

/** Four stations and ten lengths: 26 things to enter. */
export const SMALL_SHEET = 'Small hatch';
export const CLEARANCE = 100;

const dimensions = SHEETS.filter(({ name }) => name === SMALL_SHEET).flatMap(
  (sheet) => storedSheet(sheet).dimensions,
);

export const now = (page: Page) => page.locator('#now h2');
export const line = (page: Page) => page.locator('[data-line]');

/** `Read C left` or `Read C–E`: what the sheet has there, clearance added. */
export function expectedAt(heading: string): number {
  const [, point = '', side] = /^Read (\S+)(?: (left|right))?$/.exec(heading) ?? [];
  const found = dimensions.find(
    (one) =>
      one.point === point.replace('–', '-') &&
      (one.side === null ? side === undefined : one.side === (side === 'left' ? 'L' : 'R')),
  );
  if (found === undefined) throw new Error(`The sheet has nothing for "${heading}".`);
  return found.nominal + (found.quantity === 'height' ? CLEARANCE : 0);
}

/** Begins a round by the form, and waits until the device has it. */
export async function begin(page: Page, job: string): Promise<string> {
  await page.goto('/bay');
  await page.getByLabel('Job').fill(job);
  await page.getByLabel('Sheet', { exact: true }).selectOption(SMALL_SHEET);
  await page.getByLabel(/^Clearance/).fill(String(CLEARANCE));
  await page.getByRole('button', { name: 'Begin' }).click();
  await ready(page);
  return new URL(page.url()).pathname;
}

export const ready = (page: Page) => expect(line(page)).not.toHaveAttribute('data-line', 'opening');

/**
 * Does what the screen asks for by the keyboard alone: Enter, or a number and Enter.
 * @param deviation of a reading from the sheet, by its heading.
 * @returns what was asked for.
 */
export async function doNext(page: Page, deviation: (heading: string) => number = () => 0): Promise<string> {
  const heading = (await now(page).textContent()) ?? '';
  if (heading.startsWith('Read ')) {
    await expect(page.getByLabel(/^Reading/)).toBeFocused();
    await page.keyboard.type((expectedAt(heading) + deviation(heading)).toFixed(1));
  } else await expect(page.locator('#now :focus')).toBeVisible();
  await page.keyboard.press('Enter');
  // Looked at with every frame: there are dozens of these, and a poll that waits makes them slow.
  await page.waitForFunction((was) => document.querySelector('#now h2')?.textContent !== was, heading);
  return heading;
}

/** Goes on until this is asked for; returns all that was asked before. */
export async function doUntil(
  page: Page,
  until: RegExp,
  deviation?: (heading: string) => number,
): Promise<string[]> {
  const asked: string[] = [];
  while (!until.test((await now(page).textContent()) ?? '')) asked.push(await doNext(page, deviation));
  // The focus follows the heading: whoever goes elsewhere before that is called back.
  await expect(page.locator('#now :focus')).toBeVisible();
  return asked;
}

/** Tabs on until the focus is where it is wanted, as somebody without a mouse does. */
export async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 80; presses++) {
    if (await page.evaluate((one) => document.activeElement?.matches(one) === true, selector)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${selector} is not reached by Tab.`);
}

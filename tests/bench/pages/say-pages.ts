import { middleOf } from '../spread';
import { engineOf, shopsOf, type Stored } from './histories';
import { CLIENTS, type Measured } from './measure';

/** What a page may take of a bare one, and grow by from the smallest history to the largest. */
const AIM = { bare: 3, growth: 0.2, kilobytes: 200 };

/** A page as it is worked out, and as it is given again while nothing was written. */
export interface Page {
  anew: Measured;
  again: Measured;
}

/** A page beside a bare one that was asked for in the same seconds. */
export interface Beside {
  bare: Measured;
  page: Page;
}

export type Pages = ReadonlyMap<string, Beside>;

type Say = (line: string) => void;

export function sayPages(say: Say, stored: Stored, found: Pages): void {
  const floors = [...found.values()].map(({ bare }) => bare);
  const middle = (of: keyof Measured) => middleOf(floors.map((one) => one[of])).toFixed(1);
  say(
    `pages at ${toldOf(stored)}; beside each a bare page on ${engineOf(stored)}, in the middle ${middle('middle')}, ${middle('worst')} ms (median, 99 %), ${CLIENTS} clients, ${middle('processor')} ms of processor. Made anew: median and 99 %, ms; times the bare page's; ms of processor; kB sent. Given again, nothing being written: the same`,
  );
  for (const [name, { bare, page }] of found) {
    const { anew, again } = page;
    say(
      `  ${name.padEnd(16)} ${told(anew).padStart(14)}   ${ratios(anew, bare)}   ${work(anew, bare)}   ${anew.kilobytes.toFixed(0).padStart(4)} kB   again ${told(again).padStart(8)}   ${ratios(again, bare)}   ${work(again, bare)}`,
    );
  }
}

function toldOf(stored: Stored): string {
  const { readings } = stored;
  if (readings === null) return `the history of ${new URL(stored.address).pathname}`;
  const shops = shopsOf(readings);
  return `${readings.toLocaleString('en')} readings${shops > 1 ? ` of ${shops} shops, one of them looked at` : ''} in ${engineOf(stored)}`;
}

/** How many pages of the longest history of one kind of database keep to what is aimed at. */
export function sayWithin(say: Say, engine: string, first: Pages, last: Pages): void {
  const all = [...last];
  const within = (test: (one: Beside, name: string) => boolean) =>
    `${all.filter(([name, one]) => test(one, name)).length} of ${all.length} pages`;
  const near = (which: keyof Page, what: 'middle' | 'worst' | 'processor') =>
    within(({ bare, page }) => page[which][what] <= AIM.bare * bare[what]);
  const toldNear = (which: keyof Page) =>
    `${near(which, 'middle')} by the median, ${near(which, 'worst')} by the 99th percentile, ${near(which, 'processor')} by the processor`;
  say(`  on ${engine} within ${AIM.bare} times the bare page, made anew     ${toldNear('anew')}`);
  say(`  on ${engine} within ${AIM.bare} times the bare page, given again   ${toldNear('again')}`);
  say(
    `  at most ${AIM.kilobytes} kB sent                        ${within(({ page }) => page.anew.kilobytes <= AIM.kilobytes)}`,
  );
  if (first !== last)
    say(
      `  grown by less than ${100 * AIM.growth} %                     ${within(
        ({ page }, name) =>
          page.anew.processor <= (1 + AIM.growth) * (first.get(name)?.page.anew.processor ?? 0),
      )} made anew, by the processor, from the smallest history to the largest`,
    );
}

const told = ({ middle, worst }: Measured): string => `${middle.toFixed(0)}, ${worst.toFixed(0)}`;
const work = ({ processor }: Measured, bare: Measured): string =>
  `${processor.toFixed(1).padStart(5)} ms, ${(processor / bare.processor).toFixed(1)} times`;
const ratios = (one: Measured, bare: Measured): string =>
  `${(one.middle / bare.middle).toFixed(1)} and ${(one.worst / bare.worst).toFixed(1)} times`.padEnd(20);

import { placeSaid } from '@/app/_record/trade';
import type { HeightRow } from '@/app/jobs/[job]/_parts/heights';
import type { Call } from '@/lib/assess';

/** Heights that count for the record and are called one of these, away from the zero stations: `K left (CG3)`. */
export const namesOf = (rows: readonly HeightRow[], calls: readonly Call[]): string[] =>
  rows
    .filter(({ last, zero, verdict, call }) => last && !zero && verdict !== null && calls.includes(call))
    .map((row) => `${placeSaid(row)} (${row.gauge})`);

/** Those whose gauge was likely set wrong: each is to be hung again and read again. */
export const rehangNames = (rows: readonly HeightRow[]): string[] =>
  namesOf(rows, ['likely-gauge', 'likely-both']);

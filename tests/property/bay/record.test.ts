import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recordOf, type BayRecord } from '@/lib/bay';
import { asKept, entriesOf, interleaved } from './entries';

const RUNS = { numRuns: 100, seed: 20261125 };
const turns = fc.array(fc.boolean(), { minLength: 0, maxLength: 40 });

/** Everything of a record that two orders of arrival have to share. */
const told = ({ checks, setups, skipped, finished }: BayRecord) => ({
  checks: [...checks].sort(([a], [b]) => a.localeCompare(b)),
  setups: setups.map(({ readings, ...setup }) => ({ ...setup, readings: new Set(readings.values()) })),
  skipped: new Set(skipped),
  finished,
});

describe('the record of a round', () => {
  it('is the same however often entries come again, and whatever order they are handed over in', () => {
    fc.assert(
      fc.property(entriesOf('aaa'), entriesOf('bbb'), turns, (a, b, order) => {
        const kept = asKept(interleaved(a, b, order));
        const record = recordOf(kept, [], 'ONE');
        expect(recordOf([...kept].reverse(), a, 'ONE')).toEqual(record);
        expect(recordOf(kept, [...b, ...a], 'TWO')).toEqual(record);
      }),
      RUNS,
    );
  });

  it('counts an entry of the device once, wherever its copy has got to', () => {
    fc.assert(
      fc.property(entriesOf('aaa'), fc.nat(20), (own, sent) => {
        const whole = told(recordOf([], own, 'ONE'));
        const reached = own.slice(0, sent);
        // The shop keeps with a conflict what contradicts: the device sees the same ones beforehand.
        const { contradictions } = recordOf([], own, 'ONE');
        const why = new Map(contradictions.map(({ key, why: reason }) => [key, reason]));
        const kept = asKept(reached).map((one) => ({ ...one, conflict: why.get(one.key) ?? null }));
        const record = recordOf(kept, own, 'ONE');
        expect(told(record)).toEqual(whole);
        expect(record.contradictions).toEqual(contradictions);
      }),
      RUNS,
    );
  });

  it('does not depend on which device’s entries arrive first, as long as they do not read the same', () => {
    fc.assert(
      fc.property(entriesOf('aaa'), entriesOf('bbb'), turns, (a, b, order) => {
        // Each device reads in setups of its own.
        const own = (device: string, all: typeof a) =>
          all.filter(({ body }) => !('setup' in body) || body.setup.endsWith(device));
        const [first, second] = [own('aaa', a), own('bbb', b)];
        const one = recordOf(asKept([...first, ...second]), [], 'ONE');
        const other = recordOf(asKept(interleaved(first, second, order)), [], 'ONE');
        expect(told(other)).toEqual(told(one));
        expect(other.setups.map(({ label }) => label)).toEqual(one.setups.map(({ label }) => label));
      }),
      RUNS,
    );
  });

  it('shows every reading that was entered: among the readings, corrected since, or as a contradiction', () => {
    fc.assert(
      fc.property(entriesOf('aaa', 30), (own) => {
        const record = recordOf([], own, 'ONE');
        const places = new Set(
          record.setups.flatMap(({ label, readings }) => [...readings.keys()].map((at) => `${label} ${at}`)),
        );
        const contradicted = new Set(record.contradictions.map(({ key }) => key));
        for (const { key, body } of own) {
          if (body.kind !== 'read') continue;
          const { quantity, point, side, nominal } = body.dimension;
          const name = side === null ? `${quantity} ${point}` : `${quantity} ${point} ${side}`;
          const at = `${body.setup} ${name}${quantity === 'length' ? ` ${nominal}` : ''} #${body.repeat}`;
          expect(places.has(at) || contradicted.has(key)).toBe(true);
        }
      }),
      RUNS,
    );
  });
});

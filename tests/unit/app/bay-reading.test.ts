import { describe, expect, it } from 'vitest';
import { readingBodies, typedFor } from '@/app/bay/[round]/_screen/enter-reading';
import { straightOn } from '@/app/bay/[round]/_screen/straight-on';
import { hangBodies } from '@/app/bay/[round]/_screen/enter-hanging';
import { DoneAlready } from '@/app/bay/_device/standing';
import { nextOf, recordOf, targetsOf, type BayRecord, type Prompt } from '@/lib/bay';
import { Device, placeAt, SMALL_HEAD, SMALL_PLAN } from '@/tests/unit/bay/small-round';

const GAUGES = [{ tag: 'TR1', kind: 'tram' as const, fixedMark: null, inService: true }];
const recordBy = (device: Device): BayRecord => recordOf([], device.entries, 'QUI');
const standing = (record: BayRecord) => {
  let next = 0;
  return { record, labels: () => `new-${++next}` };
};

function reading(prompt: Prompt): Extract<Prompt, { do: 'read' }> {
  if (prompt.do !== 'read') throw new Error(`A reading should be due, not: ${prompt.do}.`);
  return prompt;
}

describe('what is typed for a reading', () => {
  const device = new Device();
  device.hangAndRead(placeAt('zero-gauges', 'B'), 'CG1', 'centering', []);
  const prompt = reading(nextOf(SMALL_PLAN, recordBy(device), 'zero-gauges'));
  const targets = targetsOf(prompt, null);
  const typed = (text: string, sure = false) =>
    typedFor(text, targets, { units: 'mm', clearance: SMALL_HEAD.clearance, sure });

  it('is a number, or left and right at once, and never more', () => {
    expect(typed('368,5')).toEqual({ is: 'readings', values: [368.5] });
    expect(typed('368.5 369')).toEqual({ is: 'readings', values: [368.5, 369] });
    expect(typed('368.5 369 370')).toEqual({ is: 'too-many', given: 3 });
    expect(typed('about 368')).toEqual({ is: 'none' });
  });

  it('is asked about where it is far from what was set, and kept when it is said again', () => {
    expect(typed('3685')).toEqual({ is: 'far', value: 3685 });
    expect(typed('3685', true)).toEqual({ is: 'readings', values: [3685] });
    // Clearance left out is a reading like any other.
    expect(typed('268')).toEqual({ is: 'readings', values: [268] });
  });

  it('is kept once where another tab kept the same, and beside it where another value stands', () => {
    const record = recordBy(device);
    const make = (value: number) => readingBodies(prompt, targets, [value], 'QUI');
    device.enter({
      kind: 'read',
      setup: prompt.setup.label,
      dimension: prompt.dimension,
      repeat: 1,
      value: 368,
    });
    expect(make(368)(standing(record))).toMatchObject([{ kind: 'read', value: 368 }]);
    expect(() => make(368)(standing(recordBy(device)))).toThrow(DoneAlready);
    expect(make(371)(standing(recordBy(device)))).toMatchObject([{ kind: 'read', value: 371 }]);
  });
});

describe('length after length', () => {
  it('takes a number alone once the gauge was chosen, and enters its setting with it', () => {
    const device = new Device();
    const first = nextOf(SMALL_PLAN, recordBy(device), 'center-lengths');
    expect(straightOn(first, recordBy(device), GAUGES)).toBeNull();
    device.hangAndRead(placeAt('center-lengths', 'B.L-C.R'), 'TR1', 'tram', [0]);
    const record = recordBy(device);
    const straight = straightOn(nextOf(SMALL_PLAN, record, 'center-lengths'), record, GAUGES);
    if (straight === null) throw new Error('The next length should be read straight on.');
    const bodies = readingBodies(straight, targetsOf(straight, null), [1671], 'QUI')(standing(record));
    expect(bodies).toMatchObject([
      { kind: 'hang', setup: 'new-1', gauge: 'TR1', hand: null },
      { kind: 'read', setup: 'new-1', value: 1671 },
    ]);
    const broken = GAUGES.map((gauge) => ({ ...gauge, inService: false }));
    expect(straightOn(nextOf(SMALL_PLAN, record, 'center-lengths'), record, broken)).toBeNull();
  });
});

describe('a gauge that hangs', () => {
  const place = placeAt('heights', 'D');
  const prompt = { do: 'hang' as const, step: place.step, place, again: null };
  const hanging = { gauge: 'CG1', gaugeKind: 'centering' as const, hand: null };

  it('takes up what was left out', () => {
    const device = new Device();
    device.enter({ kind: 'skip', step: 'heights', place: null, reason: 'no gauge at hand' });
    const bodies = hangBodies(prompt, true, hanging)(standing(recordBy(device)));
    expect(bodies.map(({ kind }) => kind)).toEqual(['resume', 'hang']);
  });

  it('is hung once where another tab hung it meanwhile, unless it is hung again on purpose', () => {
    const device = new Device();
    device.hangAndRead(place, 'CG1', 'centering', []);
    const record = recordBy(device);
    expect(() => hangBodies(prompt, false, hanging)(standing(record))).toThrow(DoneAlready);
    expect(hangBodies(prompt, true, hanging)(standing(record))).toHaveLength(1);
  });
});

import { describe, expect, it } from 'vitest';
import { aimedNext, alsoRead, byLikelihood, hangingAt, nextOf, recordOf, targetsOf } from '@/lib/bay';
import { Device, placeAt, SMALL_PLAN } from './small-round';

const CENTERING = ['CG1', 'CG2', 'CG3'].map((tag) => ({ tag }));
const record = (device: Device) => recordOf([], device.entries, 'QUI');

describe('where the technician goes by hand', () => {
  it('comes before what the plan asks for, and the plan goes on after it', () => {
    const device = new Device();
    const aim = { step: 'heights' as const, place: placeAt('heights', 'D').key, again: false };
    expect(aimedNext(SMALL_PLAN, record(device), aim)).toMatchObject({ do: 'hang', place: { name: 'D' } });
    device.hangAndRead(placeAt('heights', 'D'), 'CG1', 'centering', [0, 0]);
    expect(aimedNext(SMALL_PLAN, record(device), aim)).toMatchObject({ do: 'hang', place: { name: 'A' } });
    expect(aimedNext(SMALL_PLAN, record(device), null)).toMatchObject({ do: 'check' });
  });

  it('hangs a gauge again whatever was read there', () => {
    const device = new Device();
    const place = placeAt('heights', 'D');
    device.hangAndRead(place, 'CG1', 'centering', [7, 0]);
    const aim = { step: place.step, place: place.key, again: true };
    expect(aimedNext(SMALL_PLAN, record(device), aim)).toMatchObject({ do: 'hang', place: { name: 'D' } });
  });
});

describe('the gauges of a place', () => {
  it('begin with the one that hung there, then those that hang nowhere, and only then those in use', () => {
    const device = new Device();
    device.hangAndRead(placeAt('zero-gauges', 'B'), 'CG1', 'centering', [0, 0, 0, 0]);
    const at = (name: string) => ({
      plan: SMALL_PLAN,
      record: record(device),
      place: placeAt('heights', name),
    });
    expect(byLikelihood(CENTERING, at('D'), ['CG3']).map(({ tag }) => tag)).toEqual(['CG3', 'CG2', 'CG1']);
    device.hangAndRead(placeAt('heights', 'D'), 'CG2', 'centering', [0, 0]);
    expect(byLikelihood(CENTERING, at('D'), ['CG3']).map(({ tag }) => tag)).toEqual(['CG2', 'CG3', 'CG1']);
    expect([...hangingAt(SMALL_PLAN, record(device))].map(([tag, { name }]) => [tag, name])).toEqual([
      ['CG1', 'B'],
      ['CG2', 'D'],
    ]);
  });
});

describe('numbers typed at once', () => {
  it('are for left and right of the place where the gauge hangs', () => {
    const device = new Device();
    device.hangAndRead(placeAt('zero-gauges', 'B'), 'CG1', 'centering', [0]);
    const prompt = nextOf(SMALL_PLAN, record(device), 'zero-gauges');
    if (prompt.do !== 'read') throw new Error('A reading should be due.');
    expect(targetsOf(prompt, null).map(({ dimension, repeat }) => [dimension.side, repeat])).toEqual([
      ['R', 1],
    ]);
  });

  it('are for the next length with a common point where a tracking gauge reads', () => {
    const device = new Device();
    const first = placeAt('center-lengths', 'B.L-C.R');
    expect(alsoRead(SMALL_PLAN, record(device), first)).toBeNull();
    const shared = SMALL_PLAN.map((planned) => ({
      ...planned,
      places: planned.places.map((place) =>
        place.name === 'B.R-C.L' ? { ...place, name: 'B.L-C.L' } : place,
      ),
    }));
    expect(alsoRead(shared, record(device), first)?.name).toBe('B.L-C.L');
  });
});

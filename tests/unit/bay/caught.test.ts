import { describe, expect, it } from 'vitest';
import { startingPoint } from '@/lib/assess/cause/learned';
import { recordOf, shownOf } from '@/lib/bay';
import { caughtIn } from '@/lib/bay/caught';
import { Device, placeAt, SMALL_HEAD, SMALL_PLAN } from './small-round';

const KNOWING = { learned: startingPoint(), missCost: 9 };
const caught = (device: Device) =>
  caughtIn(SMALL_HEAD, shownOf(SMALL_PLAN, recordOf([], device.entries, 'QUI')), KNOWING);

/** The center section and the datum read as the sheet has them. */
function withDatum(): Device {
  const device = new Device();
  device.hangAndRead(placeAt('center-lengths', 'B.L-C.R'), 'TR1', 'tram', [0.5]);
  device.hangAndRead(placeAt('center-lengths', 'B.R-C.L'), 'TR1', 'tram', [-0.5]);
  device.hangAndRead(placeAt('zero-gauges', 'B'), 'CG1', 'centering', [0.2, -0.1, 0.1, 0]);
  device.hangAndRead(placeAt('zero-gauges', 'C'), 'CG2', 'centering', [0, 0.2, 0.1, -0.2]);
  return device;
}

describe('what is caught while a round is measured', () => {
  it('names clearance left out by its size, as soon as both sides are read', () => {
    const device = withDatum();
    const setup = device.hangAndRead(placeAt('heights', 'D'), 'CG3', 'centering', [-100.4, -99.7]);
    const found = caught(device);
    const left = found?.heights.find((one) => one.setup === setup && one.side === 'L');
    expect(left?.call).toBe('likely-gauge');
    expect(left?.slip).toEqual({ slip: 'clearance-omitted', size: -100 });
    expect(found?.check).toMatchObject({ action: 'rehang', setup });
    // Of a zero gauge's own reading only the reading scatters: 0.5 mm, twice.
    const zero = [...(found?.uncertainties ?? [])].find(([key]) => key.endsWith('height B L'));
    expect(zero?.[1]).toBeCloseTo(0.5 / Math.sqrt(2), 10);
    expect(found?.rests).toEqual({ readings: 12, rounds: 0 });
  });

  it('says nothing of gauge or body of a height before a datum hangs', () => {
    const device = new Device();
    device.hangAndRead(placeAt('heights', 'D'), 'CG3', 'centering', [8, 8]);
    expect(caught(device)).toMatchObject({ heights: [], zeroMisset: null, datumTrusted: true });
  });

  it('does not trust a datum whose center section is out beyond doubt, before any height is read', () => {
    const device = new Device();
    device.hangAndRead(placeAt('center-lengths', 'B.L-C.R'), 'TR1', 'tram', [9]);
    expect(caught(device)).toMatchObject({
      datumTrusted: false,
      centerOut: [{ point: 'B.L-C.R', deviation: 9, tolerance: 3 }],
    });
  });

  it('names a length that is out by less than its uncertainty, and trusts the datum', () => {
    const device = new Device();
    device.hangAndRead(placeAt('center-lengths', 'B.L-C.R'), 'TR1', 'tram', [3.5]);
    expect(caught(device)).toMatchObject({ datumTrusted: true, centerOut: [{ deviation: 3.5 }] });
  });
});

describe('a gauge that is read twice', () => {
  const place = placeAt('zero-gauges', 'B');

  it('has none of its readings shown or weighed until the last', () => {
    const device = new Device();
    const readings = [6, 6, 5.8, 6.1];
    for (const upTo of [1, 2, 3]) {
      const blind = new Device();
      blind.hangAndRead(place, 'CG1', 'centering', readings.slice(0, upTo));
      expect(caught(blind)).toBeNull();
    }
    device.hangAndRead(place, 'CG1', 'centering', readings);
    expect(caught(device)?.rests.readings).toBe(4);
  });

  it('is shown where the place was left out, since nothing is read there any more', () => {
    const device = new Device();
    device.hangAndRead(place, 'CG1', 'centering', [6, 6]);
    device.enter({ kind: 'skip', step: 'zero-gauges', place: place.key, reason: 'Hanger broke' });
    expect(caught(device)?.rests.readings).toBe(2);
  });
});

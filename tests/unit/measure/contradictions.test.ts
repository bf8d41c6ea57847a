import { describe, expect, it } from 'vitest';
import { readMeasurementFile, type KnownDimension, type ReadOptions } from '@/lib/measure';
import { after, file, height, length, ROUND } from './lines';

const NOW = Date.UTC(2025, 5, 1);

async function places(text: string, options: ReadOptions = {}): Promise<[number | null, string | null][]> {
  const { faults } = await readMeasurementFile(text, { now: NOW, ...options });
  return faults.map(({ line, column }) => [line, column]);
}

const again = (changed = {}) => height({ repeat: '2', ...changed });
const third = (changed = {}) => height({ repeat: '3', ...changed });

describe('lines that contradict each other: the one that most lines are against is named', () => {
  it.each([
    ['the sheet value', { nominal_mm: '201' }, 'nominal_mm'],
    ['the station', { station_mm: '1001' }, 'station_mm'],
    ['the tolerance', { tolerance_mm: '2' }, 'tolerance_mm'],
    ['the zero mark', { zero: 'no' }, 'zero'],
    ['the section', { section: 'front' }, 'section'],
    ['the clearance of the round', { clearance_mm: '50' }, 'clearance_mm'],
    ['the gauge of a setup', { gauge: 'C9' }, 'gauge'],
    ['the technician of a setup', { technician: 'T2' }, 'technician'],
    ['the stage of a setup', { stage: 'after' }, 'stage'],
    ['the attempt of a setup', { attempt: '2' }, 'attempt'],
    ['the kind of a gauge', { gauge_kind: 'tram' }, 'gauge_kind'],
    ['the sheet of a job', { sheet: 'S2' }, 'sheet'],
    ['the height that a setup reads', { point: 'D' }, 'point'],
  ])('%s', async (_, changed, column) => {
    const last = third(changed);
    expect(await places(after(again(), last))).toEqual([[6, column]]);
    expect(await places(file([last, ...ROUND, again()]))).toEqual([[2, column]]);
  });

  it('the cause of a setup and side', async () => {
    const lines = [
      height({ cause: 'gauge' }),
      again({ cause: 'gauge' }),
      third({ cause: 'body' }),
      ...ROUND.slice(1),
    ];
    expect(await places(file(lines))).toEqual([[4, 'cause']]);
  });

  it('the same repeat twice', async () => {
    expect(await places(after(height()))).toEqual([[5, 'repeat']]);
  });

  it('two lengths under one name', async () => {
    const lines = [length(), length({ repeat: '2' }), length({ setup: 'other', nominal_mm: '1500' })];
    expect(await places(after(...lines))).toEqual([[7, 'nominal_mm']]);
  });
});

describe('zero stations', () => {
  it('heights without any, or with one, are refused once', async () => {
    const none = ROUND.map((line) => line.replace(',yes,', ',no,'));
    expect(await places(file(none))).toEqual([[2, 'zero']]);
    expect(await places(file([ROUND[0], ROUND[2]]))).toEqual([[2, 'zero']]);
  });

  it('a third is named where it is outside the center section', async () => {
    const rear = height({ setup: '4', gauge: 'C4', point: 'D', station_mm: '3500', section: 'rear' });
    expect(await places(after(rear, rear.replace(',1,300.5', ',2,300.5')))).toEqual([
      [5, 'zero'],
      [6, 'zero'],
    ]);
  });

  it('a mark on one side of a station only is named on the other side', async () => {
    const right = [
      height({ side: 'R' }),
      height({ setup: '2', gauge: 'C2', point: 'B', station_mm: '2500', side: 'R', zero: 'no' }),
    ];
    expect(await places(after(...right))).toEqual([[6, 'zero']]);
  });

  it('a round is not blamed for what a faulty line may hold', async () => {
    expect(await places(file([ROUND[0], ROUND[1].replace('300.5', 'x'), ROUND[2]]))).toEqual([
      [3, 'value_mm'],
    ]);
  });

  it('a side without heights needs none', async () => {
    expect(await places(file([...ROUND, length()]))).toEqual([]);
  });
});

describe('what a line may leave to others', () => {
  const known = (...dimensions: KnownDimension[]): ReadOptions => ({
    knownSheets: (sheet) => (sheet === 'S1' ? new Map(dimensions.map((d, i) => [String(i), d])) : undefined),
  });
  const kn: KnownDimension = { quantity: 'length', point: 'K-N', side: null, nominal: 1310, tolerance: 2 };

  it('the sheet value is taken from another line of the same sheet', async () => {
    const { readings } = await readMeasurementFile(after(again({ nominal_mm: '', tolerance_mm: '' })), {
      now: NOW,
    });
    expect(readings.at(-1)).toMatchObject({ nominal: 200, tolerance: 3 });
  });

  it('the sheet value is taken from a known sheet', async () => {
    const text = after(length({ nominal_mm: '', tolerance_mm: '' }));
    expect(await places(text)).toEqual([[5, 'nominal_mm']]);
    const { readings } = await readMeasurementFile(text, { now: NOW, ...known(kn) });
    expect(readings.at(-1)).toMatchObject({ nominal: 1310, tolerance: 2 });
  });

  it('a known sheet is not contradicted', async () => {
    expect(await places(after(length({ nominal_mm: '1311' })), known(kn))).toEqual([[5, 'nominal_mm']]);
    expect(await places(after(length({ tolerance_mm: '3' })), known(kn))).toEqual([[5, 'tolerance_mm']]);
  });

  it('the kind of a gauge, the clearance of a round and the sheet of a job are taken from other lines', async () => {
    const bare = again({ gauge_kind: '', clearance_mm: '', sheet: '', zero: '', section: '' });
    const { readings, faults } = await readMeasurementFile(after(bare), { now: NOW });
    expect(faults).toEqual([]);
    expect(readings.at(-1)).toMatchObject({
      gaugeKind: 'centering',
      clearance: 100,
      sheet: 'S1',
      zero: true,
      section: 'center',
    });
  });
});

describe('letters that both sides share', () => {
  const both = ROUND.flatMap((line) => [line, line.replace(',L,', ',R,')]);
  const ab = (setup: string, nominal: string, changed = {}) =>
    length({ setup, point: 'A-B', nominal_mm: nominal, value_mm: nominal, ...changed });

  it('one name may be the straight length and the diagonal', async () => {
    const lines = [ab('s1', '1500'), ab('s2', '1500'), ab('d1', '1800'), ab('d2', '1800')];
    expect(await places(file([...both, ...lines]))).toEqual([]);
  });

  it('a third sheet value is named', async () => {
    const lines = [ab('s1', '1500'), ab('s2', '1500'), ab('d1', '1800'), ab('d2', '1800'), ab('x', '1850')];
    expect(await places(file([...both, ...lines]))).toEqual([[12, 'nominal_mm']]);
  });

  it('two that cannot be a straight length and its diagonal are a contradiction', async () => {
    const lines = [ab('s1', '1500'), ab('s2', '1500'), ab('x', '1505')];
    expect(await places(file([...both, ...lines]))).toEqual([[10, 'nominal_mm']]);
  });

  it('a setup has one setting', async () => {
    const lines = [ab('s1', '1500'), ab('s1', '1500', { repeat: '2' }), ab('s1', '1800', { repeat: '3' })];
    expect(await places(file([...both, ...lines]))).toEqual([[10, 'nominal_mm']]);
  });

  it('a line that leaves it open which of the two it is, is named', async () => {
    const lines = [ab('s1', '1500'), ab('d1', '1800'), ab('x', '', { value_mm: '1500' })];
    expect(await places(file([...both, ...lines]))).toEqual([[10, 'nominal_mm']]);
  });
});

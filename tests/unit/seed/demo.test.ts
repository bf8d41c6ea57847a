import { describe, expect, it } from 'vitest';
import { grouped } from '@/lib/measure/grouped';
import { readMeasurementFile, writeMeasurementFile } from '@/lib/measure';
import { demoShop, demoTruth } from '@/seed';

const shop = demoShop();
const END = Date.parse('2026-11-13T23:00:00Z');

describe('demoShop', () => {
  it('is the same for the same seed number, and another for another', () => {
    expect(demoShop()).toEqual(shop);
    expect(demoShop(5).readings.slice(0, 100)).not.toEqual(shop.readings.slice(0, 100));
  });

  it('goes through a measurement file without a fault and comes back as it was', async () => {
    const file = await readMeasurementFile(writeMeasurementFile(shop.readings), {
      now: END,
      timeZone: shop.shop.timeZone,
    });
    expect(file.faults).toEqual([]);
    expect(file.readings).toEqual(shop.readings);
  });

  it('has a year of 360 jobs, 8 technicians, 11 gauges and 8 sheets', () => {
    const { readings, people, gauges, sheets } = shop;
    expect(new Set(readings.map((r) => r.job)).size).toBe(360);
    expect(readings.length).toBeGreaterThan(30_000);
    expect(readings.length).toBeLessThan(50_000);
    expect(people.filter((person) => person.role === 'technician')).toHaveLength(8);
    expect(new Set(readings.map((r) => r.technician)).size).toBe(8);
    expect(new Set(readings.map((r) => r.gauge))).toEqual(new Set(gauges.map((gauge) => gauge.tag)));
    expect(new Set(readings.map((r) => r.sheet))).toEqual(new Set(sheets.map((sheet) => sheet.name)));
  });

  it('begins in November 2025 and ends by 13 November 2026, in the order of time', () => {
    const times = shop.readings.map((r) => r.takenAt);
    expect(times[0]).toBeGreaterThan(Date.parse('2025-11-17T00:00:00Z'));
    expect(times.at(-1)).toBeGreaterThan(Date.parse('2026-11-12T00:00:00Z'));
    expect(times.at(-1)).toBeLessThan(END);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });

  it('measures one round at a time: nobody and no gauge is in two places', () => {
    const rounds = [...grouped(shop.readings, (r) => `${r.job} ${r.stage} ${r.attempt}`).values()];
    const spans = rounds
      .map((readings) => readings.map((r) => r.takenAt))
      .map((times) => ({ from: Math.min(...times), to: Math.max(...times) }))
      .sort((a, b) => a.from - b.from);
    const overlaps = spans.filter((span, index) => span.from <= (spans[index - 1]?.to ?? 0));
    expect(overlaps).toEqual([]);
  });

  it('reads every dimension as its sheet has it', () => {
    const sheets = new Map(
      shop.sheets.flatMap((sheet) =>
        sheet.dimensions.map((d) => [`${sheet.name} ${d.quantity} ${d.point} ${d.side ?? ''}`, d] as const),
      ),
    );
    for (const reading of shop.readings) {
      const dimension = sheets.get(
        `${reading.sheet ?? ''} ${reading.quantity} ${reading.point} ${reading.side ?? ''}`,
      );
      expect(reading).toMatchObject({ ...dimension });
      expect(dimension).toBeDefined();
    }
  });

  it('reads with each kind of gauge, in steps of its scale', () => {
    const steps = { tram: 0.5, 'digital-tram': 0.1, tracking: 0.5, centering: 0.1, strut: 0.5, tape: 1 };
    for (const [kind, step] of Object.entries(steps)) {
      const values = shop.readings.filter((r) => r.gaugeKind === kind).map((r) => r.value / step);
      expect(values.length, kind).toBeGreaterThan(20);
      expect(Math.max(...values.map((value) => Math.abs(value - Math.round(value)))), kind).toBeLessThan(
        1e-6,
      );
    }
  });

  it('reads a tape before a gauge and never instead of one', () => {
    for (const tape of shop.readings.filter((r) => r.gaugeKind === 'tape')) {
      const sameRound = shop.readings.filter(
        (r) =>
          r.job === tape.job &&
          r.stage === tape.stage &&
          r.attempt === tape.attempt &&
          r.point === tape.point,
      );
      expect(sameRound.at(-1)?.gaugeKind).not.toBe('tape');
    }
  });

  it('states a cause for about a quarter of the heights that were hung again, the truth each time', () => {
    const heights = demoTruth().jobs.flatMap((job) =>
      job.rounds.flatMap((round) => round.heights.map((height) => ({ job: job.job, ...height }))),
    );
    const again = heights.filter((height) => height.superseded);
    const labelled = heights.filter((height) => height.labelled);
    expect(labelled.length / again.length).toBeGreaterThan(0.18);
    expect(labelled.length / again.length).toBeLessThan(0.32);
    const stated = new Map(
      shop.readings
        .filter((r) => r.cause !== null)
        .map((r) => [`${r.job} ${r.setup} ${r.side ?? ''}`, r.cause] as const),
    );
    const known = new Map(labelled.map((h) => [`${h.job} ${h.setup} ${h.side}`, h.cause] as const));
    expect(stated).toEqual(known);
    expect(new Set(stated.values())).toEqual(new Set(['neither', 'gauge', 'body', 'both']));
  });
});

import { beforeEach, describe, expect, it } from 'vitest';
import { bayEntries, bayKnowledge, getBayRound, listBayRounds, takeBayEntries } from '@/lib/access';
import { atWork } from '@/lib/assess/answers';
import { startingPoint, type TechnicianHand } from '@/lib/assess/cause/learned';
import { keepFit } from '@/lib/refresh/stored-fit';
import { saveGauges } from '@/lib/store';
import { Device, dimension, openRound } from '@/tests/unit/store/bay-device';
import { freshStore } from '@/tests/unit/store/fresh-store';
import { BY_COMMAND } from '@/tests/unit/store/invented-readings';
import { viewerOf } from './viewer-of';

const store = freshStore();
let round = 0;

beforeEach(async () => {
  round = await openRound(store.shop);
});

describe('a round beside the car', () => {
  it('is open to everybody while it is measured; finished, to who took part, the trainer and the manager', async () => {
    const [one, two, trainer] = await Promise.all(['ONE', 'TWO', 'TRA'].map(viewerOf));
    if (one === undefined || two === undefined || trainer === undefined) throw new Error('nobody');
    for (const anyone of [one, two, trainer]) {
      expect(await getBayRound(anyone, round)).toMatchObject({ id: round });
      expect(await listBayRounds(anyone)).toHaveLength(1);
    }
    const device = new Device('aaa');
    device.hang('b1-1aaa');
    device.make({ kind: 'finish' });
    await takeBayEntries(one, round, device.made);
    for (const [who, seen] of [
      [one, 2],
      [trainer, 2],
      [two, 0],
    ] as const) {
      expect(await bayEntries(who, round, 0), who.code).toHaveLength(seen);
      expect((await getBayRound(who, round)) === null, who.code).toBe(seen === 0);
      expect(await listBayRounds(who), who.code).toHaveLength(seen === 0 ? 0 : 1);
    }
    // What was still on its way is taken, and shows its sender nothing but itself.
    await new Promise((resolve) => setTimeout(resolve, 2));
    await takeBayEntries(two, round, [new Device('bbb').hang('b1-1bbb')]);
    expect((await bayEntries(two, round, 0)).map(({ by }) => by)).toEqual(['TWO']);
    expect(await getBayRound(two, round)).toBeNull();
    expect(await getBayRound(one, round + 1)).toBeNull();
  });

  it('counts to the hand that is named where a trainer enters, never where a technician does', async () => {
    const [one, trainer] = [await viewerOf('ONE'), await viewerOf('TRA')];
    const [a, b] = [new Device('aaa'), new Device('bbb')];
    a.hang('b1-1aaa', { hand: 'TWO' });
    a.read('b1-1aaa', dimension('A', 'L'), 300);
    b.hang('b1-1bbb', { hand: 'TWO' });
    await takeBayEntries(one, round, a.made);
    await takeBayEntries(trainer, round, b.made);
    expect((await bayEntries(trainer, round, 0)).map(({ conflict }) => conflict)).toEqual([
      expect.stringMatching(/trainer or a manager/),
      expect.stringMatching(/trainer or a manager/),
      null,
    ]);
  });
});

describe('what a device knows of the shop', () => {
  const hand: TechnicianHand = { ...startingPoint().newTechnician, setting: 1.25 };
  const learned = (codes: readonly string[]) => ({
    ...{ inputsVersion: 0, program: 'this one', figures: { technicians: [], gauges: [] } as never },
    atWork: atWork([], startingPoint()),
    learned: {
      ...startingPoint(),
      newTechnician: hand,
      technicians: Object.fromEntries(codes.map((code) => [code, { ...hand, setting: 1.5 }])),
    },
  });

  it('is common practice before the first fit, the gauges that are not retired, and for whom may be entered', async () => {
    const gauge = { kind: 'centering', fixedMark: 14, verifiedAt: null } as const;
    await saveGauges(
      store.shop,
      [
        { ...gauge, tag: 'C1', state: 'in-service' },
        { ...gauge, tag: 'C2', state: 'out-of-service' },
        { ...gauge, tag: 'C3', state: 'retired' },
      ],
      BY_COMMAND,
    );
    const known = await bayKnowledge(await viewerOf('ONE'));
    expect(known).toEqual({
      ...{ learned: startingPoint(), missCost: 9, hands: ['ONE'] },
      gauges: [
        { tag: 'C1', kind: 'centering', fixedMark: 14, inService: true },
        { tag: 'C2', kind: 'centering', fixedMark: 14, inService: false },
      ],
    });
    expect((await bayKnowledge(await viewerOf('TRA'))).hands).toEqual(['TRA', 'ONE', 'TWO']);
  });

  it('holds the own hand alone, and nothing that would be a colleague’s figure', async () => {
    await keepFit(store.shop, learned(['ONE', 'TWO']));
    const [one, trainer] = [await viewerOf('ONE'), await viewerOf('TRA')];
    const few = await bayKnowledge(one);
    expect(Object.keys(few.learned.technicians)).toEqual(['ONE']);
    expect(few.learned.newTechnician).toEqual(startingPoint().newTechnician);
    expect(JSON.stringify(few)).not.toContain('TWO');
    expect((await bayKnowledge(trainer)).learned).toMatchObject({ technicians: {}, newTechnician: hand });
    await keepFit(store.shop, learned(['ONE', 'TWO', 'TRA']));
    expect((await bayKnowledge(one)).learned.newTechnician).toEqual(hand);
  });
});

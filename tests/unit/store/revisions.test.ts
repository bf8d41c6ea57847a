import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { describe, expect, it } from 'vitest';
import { collapse, type Reading } from '@/lib/measure';
import {
  correctReading,
  countExcluded,
  countOutcomes,
  excludeReading,
  getJob,
  getJobRow,
  heightsFor,
  includeReading,
  inputsVersion,
  jobsWithoutOutcome,
  listSetups,
  listTrace,
  loadJobs,
  readingHistory,
  readingsFor,
  readingsOfSetup,
  recordOutcome,
  roundsWithoutProof,
  roundsWithoutVerdict,
  saveReadings,
  verdictsFor,
  type ReadingPlace,
} from '@/lib/store';
import { database } from '@/lib/store/connection/database';
import { broughtUpToDate } from './brought-up-to-date';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, lines, regularShop } from './invented-readings';

const store = freshStore({ filled: (shop) => saveReadings(shop, SHOP, FILE, BY_COMMAND) });
const SHOP = regularShop(3);
const FILE = fileNamed('three.csv');
const ACTOR = { person: 'T0', via: 'page' } as const;
const PLACE = {
  ...{ job: 'J000001', setup: 'before-0', quantity: 'height', point: 'A', side: 'L', repeat: 2 },
} as const satisfies ReadingPlace;
const WHY = { reason: 'read at the wrong mark' };

const is = ({ job, setup, point, side, repeat }: ReadingPlace | Reading) =>
  [job, setup, point, side, repeat].join();
const isPlace = (one: Reading) => is(one) === is(PLACE);
/** The readings of a file that had held this value from the start. */
const withValue = (value: number) => SHOP.map((one) => (isPlace(one) ? { ...one, value } : one));

const correct = (value: number) => correctReading(store.shop, { ...PLACE, value, ...WHY }, ACTOR);
const exclude = (change: Partial<ReadingPlace> = {}) =>
  excludeReading(store.shop, { ...PLACE, ...change, ...WHY }, ACTOR);
const include = (change: Partial<ReadingPlace> = {}) =>
  includeReading(store.shop, { ...PLACE, ...change, ...WHY }, ACTOR);

/** Every collapsed form as it is stored, to the last bit. */
const observations = () =>
  database().observation.findMany({ orderBy: [{ setupId: 'asc' }, { dimensionId: 'asc' }] });

async function allReadings(filter: Parameters<typeof readingsFor>[1] = {}): Promise<Reading[]> {
  const all: Reading[] = [];
  for await (const one of readingsFor(store.shop, filter)) all.push(one);
  return all;
}

describe('a corrected reading', () => {
  it('comes to the same, to the last bit, as a file that had held the value', async () => {
    await correct(303.7);
    expect(await loadJobs(store.shop)).toEqual(collapse(withValue(303.7)));
    expect(collapse(await allReadings())).toEqual(collapse(withValue(303.7)));
    const revised = await observations();
    const other = await database().shop.create({ data: { name: 'another', timeZone: 'UTC' } });
    await saveReadings(other.id, withValue(303.7), FILE, BY_COMMAND);
    const whole = (await observations()).slice(revised.length);
    const values = (rows: typeof whole) => rows.map(({ n, mean, deviation, ss }) => [n, mean, deviation, ss]);
    expect(values(revised)).toEqual(values(whole));
  });

  it('and corrected back gives the same figures as before, to the last bit', async () => {
    const before = await observations();
    const [value] = SHOP.filter(isPlace).map((one) => one.value);
    await correct(303.7);
    expect(await observations()).not.toEqual(before);
    await correct(value ?? 0);
    expect(await observations()).toEqual(before);
  });

  it('is not undone, nor contradicted, by its file or by a download that is loaded again', async () => {
    await correct(303.7);
    const [stored, download] = [await observations(), await allReadings()];
    for (const readings of [SHOP, download]) {
      expect(await saveReadings(store.shop, readings, FILE, BY_COMMAND)).toMatchObject({
        ...{ added: 0, alreadyThere: SHOP.length, jobs: [] },
      });
    }
    expect(await observations()).toEqual(stored);
    await expect(saveReadings(store.shop, withValue(1), FILE, BY_COMMAND)).rejects.toThrow(
      /is stored as .* mm, corrected to 303\.7 mm, this line says 1\./,
    );
  });

  it('counts with its new value when further repeats of it come', async () => {
    await correct(303.7);
    const third = SHOP.filter(isPlace).map((one) => ({ ...one, repeat: 3, value: 305 }));
    await saveReadings(store.shop, third, fileNamed('more'), BY_COMMAND);
    expect(await loadJobs(store.shop)).toEqual(collapse([...withValue(303.7), ...third]));
  });

  it('puts figures, verdict and outcome of its job out of date, and no other job’s', async () => {
    await broughtUpToDate(store.shop);
    const fit = (await verdictsFor(store.shop, {}))[0]?.fit ?? 0;
    expect(await roundsWithoutVerdict(store.shop, fit)).toEqual([]);
    const version = await inputsVersion(store.shop);
    await correct(303.7);
    expect(await inputsVersion(store.shop)).toBe(version + 1);
    const waiting = [{ job: 'J000001', stage: 'before', attempt: 1, version: 2 }];
    expect(await roundsWithoutVerdict(store.shop, fit)).toEqual(waiting);
    expect(await roundsWithoutProof(store.shop, 1)).toEqual(waiting);
    expect(await jobsWithoutOutcome(store.shop)).toEqual([{ job: 'J000001', version: 2 }]);
  });

  it('keeps every value with who, when and why, and stands in the trace', async () => {
    await correct(303.7);
    await exclude();
    const revisions = await readingHistory(store.shop, { job: 'J000001', changed: true });
    const value = SHOP.find(isPlace)?.value;
    expect(revisions).toMatchObject([
      {
        ...PLACE,
        nominal: 200,
        revision: 1,
        value,
        excluded: false,
        reason: null,
        by: null,
        file: 'three.csv',
      },
      { ...PLACE, revision: 2, value: 303.7, excluded: false, ...WHY, by: 'T0' },
      { ...PLACE, revision: 3, value: 303.7, excluded: true, ...WHY, by: 'T0' },
    ]);
    expect(revisions.map(({ enteredAt }) => enteredAt === null)).toEqual([true, false, false]);
    expect(await readingHistory(store.shop, { job: 'J000001', setup: 'before-0' })).toHaveLength(6);
    const { rows } = await listTrace(store.shop, { job: 'J000001', kind: 'reading' });
    expect(rows).toMatchObject([
      {
        action: 'excluded',
        before: { value: 303.7, excluded: false },
        after: { value: 303.7, excluded: true },
      },
      {
        action: 'corrected',
        by: 'T0',
        via: 'page',
        ...WHY,
        concerns: 'T1',
        before: { value },
        after: { value: 303.7 },
      },
    ]);
  });

  it('is refused in words where there is nothing to correct', async () => {
    const before = await observations();
    const at = (change: Partial<ReadingPlace & { value: number; reason: string }>) =>
      correctReading(store.shop, { ...PLACE, value: 303, ...WHY, ...change }, ACTOR);
    await expect(at({ job: 'J9' })).rejects.toThrow('Job J9 has no setup before-0.');
    await expect(at({ point: 'Z' })).rejects.toThrow(/has no reading of height Z L/);
    await expect(at({ repeat: 9 })).rejects.toThrow(/There is no reading 9 of height A L/);
    await expect(at({ value: SHOP.find(isPlace)?.value ?? 0 })).rejects.toThrow(/ mm already/);
    await expect(at({ value: Number.NaN })).rejects.toThrow(/no reading in millimetres/);
    await expect(at({ reason: '  ' })).rejects.toThrow(/Say why/);
    await expect(correctReading(store.shop, { ...PLACE, value: 1, ...WHY }, BY_COMMAND)).rejects.toThrow(
      /Say who/,
    );
    await expect(
      correctReading(store.shop, { ...PLACE, value: 1, ...WHY }, { ...ACTOR, person: 'X' }),
    ).rejects.toThrow(/nobody with the code X/);
    expect(await observations()).toEqual(before);
    expect((await listTrace(store.shop, { kind: 'reading' })).total).toBe(0);
  });

  it('of a length that shares its name with its diagonal is told apart by the sheet’s value', async () => {
    const length = {
      job: 'D',
      sheet: 'D',
      quantity: 'length',
      point: 'K-N',
      side: null,
      zero: false,
    } as const;
    const two = lines([
      { job: 'D', sheet: 'D', setup: 'h', point: 'K', side: 'L' },
      { job: 'D', sheet: 'D', setup: 'h', point: 'K', side: 'R' },
      { job: 'D', sheet: 'D', setup: 'h', point: 'N', side: 'L' },
      { job: 'D', sheet: 'D', setup: 'h', point: 'N', side: 'R' },
      { ...length, setup: 's', nominal: 900, value: 901 },
      { ...length, setup: 's', nominal: 1300, value: 1302 },
    ]);
    await saveReadings(store.shop, two, fileNamed('two'), BY_COMMAND);
    const place = {
      job: 'D',
      setup: 's',
      quantity: 'length',
      point: 'K-N',
      side: null,
      repeat: 1,
      value: 1301,
    } as const;
    await expect(correctReading(store.shop, { ...place, ...WHY }, ACTOR)).rejects.toThrow(/two values/);
    await correctReading(store.shop, { ...place, nominal: 1300, ...WHY }, ACTOR);
    const job = await getJob(store.shop, 'D');
    expect(
      job?.rounds[0]?.setups
        .flatMap((setup) => setup.observations.map(({ deviation }) => deviation))
        .slice(-2),
    ).toEqual([1, 1]);
  });
});

describe('an excluded reading', () => {
  it('leaves the figures as if it had not been read, and is counted beside them', async () => {
    await exclude();
    const rest = SHOP.filter((one) => !isPlace(one));
    expect(await loadJobs(store.shop)).toEqual(collapse(rest));
    expect(await allReadings()).toHaveLength(rest.length);
    expect(await readingsOfSetup(store.shop, 'J000001', 'before-0')).toHaveLength(3);
    expect(await getJobRow(store.shop, 'J000001')).toMatchObject({ readings: 32, excluded: 1 });
    const { rows } = await listSetups(store.shop, { job: 'J000001', gauge: 'C0' });
    expect(
      rows.map(({ excluded, observations: all }) => [excluded, ...all.map((one) => one.excluded)]),
    ).toEqual([
      [0, 0, 0],
      [1, 1, 0],
    ]);
    const count = (filter: Parameters<typeof countExcluded>[1]) => countExcluded(store.shop, filter);
    expect(await count({})).toBe(1);
    expect(await count({ technician: 'T1', gauge: 'C0', job: 'J000001' })).toBe(1);
    expect(await count({ technician: 'T2' })).toBe(0);
    const hung = SHOP.find(isPlace)?.takenAt ?? 0;
    expect(await count({ from: hung - 60_000, to: hung })).toBe(1);
    expect(await count({ from: hung })).toBe(0);
  });

  it('leaves the other one of its dimension as the only one', async () => {
    expect(await allReadings({ repeated: true })).toHaveLength(SHOP.length);
    await exclude();
    const only = is({ ...PLACE, repeat: 1 });
    const rest = SHOP.filter((one) => !isPlace(one) && is(one) !== only);
    expect((await allReadings({ repeated: true })).map(is).sort()).toEqual(rest.map(is).sort());
  });

  it('and included again gives the same figures as before, to the last bit', async () => {
    const before = await observations();
    await exclude();
    await expect(exclude()).rejects.toThrow(/is excluded already/);
    await include();
    await expect(include()).rejects.toThrow(/counts already/);
    expect(await observations()).toEqual(before);
  });

  it('stays excluded when its file comes again, and when further repeats come', async () => {
    await exclude();
    expect(await saveReadings(store.shop, SHOP, FILE, BY_COMMAND)).toMatchObject({ added: 0 });
    const third = SHOP.filter(isPlace).map((one) => ({ ...one, repeat: 3, value: 305 }));
    await saveReadings(store.shop, third, fileNamed('more'), BY_COMMAND);
    expect(await loadJobs(store.shop)).toEqual(collapse([...SHOP.filter((one) => !isPlace(one)), ...third]));
    expect(await countExcluded(store.shop)).toBe(1);
  });
});

describe('a dimension whose readings are all excluded', () => {
  it('is left out of everything that assesses, and comes back when one is included', async () => {
    await broughtUpToDate(store.shop);
    const heights = await heightsFor(store.shop, { job: 'J000001' });
    await exclude({ repeat: 1 });
    await exclude();
    const rest = SHOP.filter((one) => is({ ...one, repeat: 2 }) !== is(PLACE));
    expect(await loadJobs(store.shop)).toEqual(collapse(rest));
    expect(await heightsFor(store.shop, { job: 'J000001' })).toHaveLength(heights.length - 1);
    const { rows } = await listSetups(store.shop, { job: 'J000001', gauge: 'C0' });
    expect(rows.map(({ excluded, observations: all }) => [excluded, all.length])).toEqual([
      [0, 2],
      [2, 1],
    ]);
    await broughtUpToDate(store.shop);
    await include({ repeat: 1 });
    await include();
    expect(await loadJobs(store.shop)).toEqual(collapse(SHOP));
    await broughtUpToDate(store.shop);
    expect(await heightsFor(store.shop, { job: 'J000001' })).toEqual(heights);
  });

  it('can still be told what a re-check showed, by hand and by file', async () => {
    await exclude({ repeat: 1 });
    await exclude();
    const told = SHOP.filter((one) => one.job === PLACE.job && one.setup === PLACE.setup && one.side === 'L');
    const cause = told.map((one): Reading => ({ ...one, cause: 'gauge' }));
    expect(await saveReadings(store.shop, cause, fileNamed('cause'), BY_COMMAND)).toMatchObject({
      added: 0,
      causes: 1,
    });
    await recordOutcome(store.shop, { ...PLACE, cause: 'body', note: null }, ACTOR);
    await include();
    const job = await getJob(store.shop, 'J000001');
    const left = job?.rounds[0]?.setups[0]?.observations.find(({ side }) => side === 'L');
    expect(left).toMatchObject({ n: 1, cause: 'body' });
  });

  it('takes verdict and outcome with it where it was all that its job had', async () => {
    const all = SHOP.filter(({ job }) => job === 'J000002');
    await broughtUpToDate(store.shop);
    for (const one of all) await excludeReading(store.shop, { ...one, ...WHY }, ACTOR);
    expect(await getJob(store.shop, 'J000002')).toEqual({ job: 'J000002', sheet: 'S2', rounds: [] });
    expect((await loadJobs(store.shop)).map(({ job }) => job)).toEqual(['J000000', 'J000001']);
    expect(await verdictsFor(store.shop, { job: 'J000002' })).toEqual([]);
    expect(await getJobRow(store.shop, 'J000002')).toMatchObject({
      outcome: 'unknown',
      excluded: all.length,
    });
    await broughtUpToDate(store.shop);
    expect(await jobsWithoutOutcome(store.shop)).toEqual([]);
    expect(await roundsWithoutProof(store.shop, 1)).toEqual([]);
    expect(await countOutcomes(store.shop, 'shop')).toMatchObject([{ jobs: 2 }]);
    for (const one of all) await includeReading(store.shop, { ...one, ...WHY }, ACTOR);
    await broughtUpToDate(store.shop);
    expect(await loadJobs(store.shop)).toEqual(collapse(SHOP));
    expect(await verdictsFor(store.shop, { job: 'J000002' })).toHaveLength(2);
    expect(await countOutcomes(store.shop, 'shop')).toMatchObject([{ jobs: 3 }]);
  });
});

describe('a correction that is broken off', () => {
  it('leaves nothing half done: revision, collapsed form, versions and trace come together or not at all', async () => {
    const program = ['lib/commands/begin.mjs', 'tests/unit/store/correcting-process.ts'];
    const args = [...program, String(store.shop), JSON.stringify(PLACE)];
    const before = await inputsVersion(store.shop);
    const child = spawn(process.execPath, args, {
      env: { ...process.env, DATABASE_URL: store.url },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const ended = once(child, 'exit');
    await once(child.stdout, 'data');
    await new Promise((resolve) => setTimeout(resolve, 300));
    child.kill('SIGKILL');
    await ended;
    const revisions = await readingHistory(store.shop, { job: 'J000001', setup: 'before-0' });
    const own = revisions.filter(({ side, repeat }) => side === 'L' && repeat === 2);
    const changes = own.length - 1;
    expect(await inputsVersion(store.shop)).toBe(before + changes);
    expect((await listTrace(store.shop, { kind: 'reading' })).total).toBe(changes);
    expect(await loadJobs(store.shop)).toEqual(collapse(withValue(own.at(-1)?.value ?? 0)));
  });
});

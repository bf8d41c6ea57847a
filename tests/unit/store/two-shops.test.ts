import { beforeEach, describe, expect, it } from 'vitest';
import type { Entry } from '@/lib/bay';
import { collapse, tabulateMeasurementFile, writeMeasurementFile, type Reading } from '@/lib/measure';
import * as door from '@/lib/store';
import { statement } from './fresh-store';
import { freshStore } from './fresh-store';
import { BY_COMMAND, fileNamed, regularShop } from './invented-readings';

const store = freshStore();
/** A second shop in the same database, with the same names for everything but what tells them apart. */
const OTHER = 77;
const THEIRS = regularShop(3).map((one): Reading => ({
  ...one,
  value: one.value + 50,
  takenAt: one.takenAt + 1000,
}));
const OURS = regularShop(3);

const HEIGHT = {
  ...({ setup: 'before-0', point: 'A', side: 'L', zero: false, deviation: 4 } as const),
  p: { neither: 0.1, gauge: 0.9, body: 0, both: 0 },
  ...{ misset: 4, body: 0, signature: null },
};
const ROUND = { job: 'J000000', stage: 'before', attempt: 1, version: 1 } as const;

const ACTOR = { person: 'T0', via: 'page' } as const;

const PLAN: door.TrialPlan = {
  asked: { question: 'repeatability', ratio: 1.5 },
  points: [{ name: 'A', value: 300, tolerance: 3 }],
  people: ['T0'],
  ...{ setups: 1, readings: 2, seed: 1, expected: { reading: 0.4, setting: 1 } },
};

/** Everything that a shop can be told, told to one shop. */
async function tell(shop: number, readings: readonly Reading[], mark: string): Promise<number> {
  await door.savePeople(shop, [{ code: 'T0', name: mark, role: 'trainer', active: true }], BY_COMMAND);
  await door.saveGauges(
    shop,
    [{ tag: 'C0', kind: 'centering', fixedMark: 14, state: 'in-service', verifiedAt: null }],
    BY_COMMAND,
  );
  await door.recordVerification(
    shop,
    {
      gauge: 'C0',
      at: 1000,
      error: 1,
      passed: true,
      by: 'T0',
      note: mark,
    },
    BY_COMMAND,
  );
  const dimensions = [
    {
      quantity: 'height',
      point: 'A',
      side: 'L',
      section: 'front',
      station: 0,
      zero: false,
      nominal: 200,
      tolerance: 3,
    } as const,
  ];
  await door.saveSheet(shop, { name: 'S0', dimensions, points: [] }, BY_COMMAND);
  // One job as a table, as large files come; the others one by one.
  const { readings: table } = await tabulateMeasurementFile(
    writeMeasurementFile(readings.filter(({ job }) => job === 'J000002')),
  );
  if (table === null) throw new Error('The table of one job is refused.');
  await door.saveTable(shop, table, fileNamed(`${mark} as a table`), BY_COMMAND);
  await door.saveReadings(
    shop,
    readings.filter(({ job }) => job !== 'J000002'),
    fileNamed(mark),
    BY_COMMAND,
  );
  await door.setMissCost(shop, { cost: mark === 'ours' ? 10 : 20, at: 1 }, { person: 'T0', via: 'page' });
  await door.recordOutcome(
    shop,
    {
      job: 'J000001',
      setup: 'before-0',
      side: 'L',
      cause: 'gauge',
      note: mark,
      at: 2,
    },
    { person: 'T1', via: 'page' },
  );
  const place = { job: 'J000001', setup: 'before-0', quantity: 'height', point: 'A', side: 'R' } as const;
  const change = { ...place, repeat: 1, reason: mark };
  await door.correctReading(shop, { ...change, value: mark === 'ours' ? 301 : 302 }, ACTOR);
  await door.excludeReading(shop, change, ACTOR);
  await door.includeReading(shop, change, ACTOR);
  await door.excludeReading(shop, { ...change, side: 'L' }, ACTOR);
  await door.savePeople(shop, [{ code: 'GONE', name: mark, role: 'technician', active: true }], ACTOR);
  await door.removePerson(shop, 'GONE', mark, ACTOR);
  const inputsVersion = await door.inputsVersion(shop);
  const fit = await door.saveFit(shop, { inputsVersion, parameters: mark, figures: null });
  const verdict = {
    ...ROUND,
    decidable: true,
    why: mark,
    pZeroMisset: 0.1,
    heights: [HEIGHT],
    document: mark,
  };
  await door.saveRoundVerdicts(shop, fit.id, [verdict]);
  const proof = { ...HEIGHT, proved: 'gauge', by: 'recorded' } as const;
  await door.saveRoundProofs(shop, 1, [{ ...ROUND, ahead: mark === 'ours', heights: [proof] }]);
  const counts = { controlled: 3, out: mark === 'ours' ? 0 : 2, sections: {} };
  const outcome = { job: 'J000002', right: mark === 'ours', technician: 'T2', at: 5, ...counts };
  await door.saveJobOutcomes(shop, [{ ...outcome, version: 1 }]);
  const texts = { inputsVersion, figures: 'null' };
  await door.followFit(shop, fit.id, { ...texts, parameters: JSON.stringify(`${mark}, followed`) });
  const restated = (said: door.Json) => `${said as string}, restated`;
  const nothingJudged = { verdicts: [], proofs: { format: 1, rounds: [] } };
  await door.saveFollowed(shop, { outcomes: [], judged: { fit: fit.id, ...nothingJudged, restated } });
  await door.saveFitAnswers(shop, fit.id, { rates: mark });
  await door.saveFigures(shop, {
    fit: fit.id,
    shares: { madeBy: 'a test', changed: [] },
    answers: { texts: new Map([['risk', JSON.stringify(mark)]]), gone: [] },
    madeFrom: { question: 'made-from', before: null },
    stored: { ...texts, parameters: JSON.stringify(`${mark}, figured`) },
  });
  await door.saveJobShares(shop, fit.id, 'a test', [{ job: 'J000000', version: 1, document: mark }]);
  const trial = await door.createTrial(shop, { name: mark, plan: PLAN }, ACTOR);
  const first = { run: 1, repeat: 1 };
  await door.enterTrialReading(shop, trial, { ...first, value: 300, by: 'T0' }, ACTOR);
  await door.correctTrialReading(shop, trial, { ...first, value: 301, reason: mark }, ACTOR);
  await door.closeTrial(shop, trial, ACTOR);
  const bay = { job: mark, sheet: 'S1', stage: 'before', attempt: 1, clearance: 100 } as const;
  const round = await door.beginBayRound(shop, bay, 'T0', ACTOR);
  const skipped: Entry = {
    ...{ key: `00000000-0000-4000-8000-0000000000${shop === OTHER ? '02' : '01'}`, device: 'aaa' },
    ...{ sequence: 1, at: 1, body: { kind: 'skip', step: 'lengths', place: null, reason: mark } },
  };
  await door.takeBayEntries(shop, round, [skipped], { by: 'T0', forOthers: false }, ACTOR);
  await keepSheets(shop, mark);
  return fit.id;
}

async function keepSheets(shop: number, mark: string): Promise<void> {
  const point = { letter: 'Q', side: null, section: null, station: 9, zero: false, halfWidth: null } as const;
  const content = { points: [{ ...point, description: mark, feature: null }], dimensions: [] };
  await door.createSheet(shop, { name: 'Q', ...content }, 'entered', ACTOR);
  await door.copySheet(shop, 'Q', 'Q again', ACTOR);
  const points = content.points.map((one) => ({ ...one, station: 10 }));
  await door.correctSheet(shop, 'Q', { revision: 1, reason: mark, points, dimensions: [] }, ACTOR);
  await door.retireSheet(shop, 'Q', true, ACTOR);
}

/** What every function of the door that only reads says of a shop. */
async function everything(shop: number, fit: number) {
  const trial = (await door.listTrials(shop))[0]?.id ?? 0;
  const round = (await door.listBayRounds(shop, 'T0'))[0]?.id ?? 0;
  const readings: Reading[] = [];
  for await (const one of door.readingsFor(shop)) readings.push(one);
  const shares: door.Json[] = [];
  for await (const one of door.jobShares(shop)) shares.push(one);
  return {
    listBayRounds: (await door.listBayRounds(shop, 'T0')).map(({ job }) => job),
    // Numbers of rows differ from shop to shop: that there are as many is what is told.
    bayRoundsOfJob: (await door.bayRoundsOfJob(shop, (await door.listBayRounds(shop, 'T0'))[0]?.job ?? ''))
      .length,
    getBayRound: (await door.getBayRound(shop, round))?.job ?? null,
    notTheirRound: await door.getBayRound(shop, round + 1),
    bayStanding: await door.bayStanding(shop, round, 'T0'),
    bayEntries: (await door.bayEntries(shop, round, 0)).map(({ body }) => body),
    inputsVersion: await door.inputsVersion(shop),
    listPeople: await door.listPeople(shop),
    getPerson: await door.getPerson(shop, 'T0'),
    personalExport: await door
      .personalExport(shop, 'T2')
      .then((one) => one && { ...(one as Record<string, door.Json>), madeAt: 0 }),
    listGauges: await door.listGauges(shop),
    getGauge: await door.getGauge(shop, 'C0'),
    missCosts: await door.missCosts(shop),
    listTrace: (await door.listTrace(shop, { person: 'T0' })).rows.map(({ id: _, at: __, ...row }) => row),
    listSheets: (await door.listSheets(shop)).map(({ retiredAt: _, ...sheet }) => sheet),
    openSheet: await door.openSheet(shop, 'S0'),
    sheetHistory: (await door.sheetHistory(shop, 'Q')).map(({ at: _, ...revision }) => revision),
    getSheet: await door.getSheet(shop, 'S0'),
    sheetBook: await door.sheetBook(shop),
    countJobs: await door.countJobs(shop, { search: 'J0' }),
    listJobs: await door.listJobs(shop, { technician: 'T0', sort: 'outcome' }),
    getJobRow: await door.getJobRow(shop, 'J000002'),
    listSetups: await door.listSetups(shop, { technician: 'T1', gauge: 'C0' }),
    newestHanging: await door.newestHanging(shop),
    loadJobs: await door.loadJobs(shop, { sheet: 'S0' }),
    getJob: await door.getJob(shop, 'J000000'),
    readingsFor: readings,
    jobShares: shares,
    jobsWithoutShare: await door.jobsWithoutShare(shop, fit, 'a test'),
    jobsInOrder: await door.jobsInOrder(shop, ['J000002', 'J000000']),
    fitAnswerTexts: await door.fitAnswerTexts(shop, fit, ['rates']),
    readingsOfSetup: await door.readingsOfSetup(shop, 'J000000', 'before-0'),
    readingsOfJob: await door.readingsOfJob(shop, 'J000001'),
    readingHistory: (await door.readingHistory(shop, { job: 'J000001', changed: true })).map(
      ({ enteredAt: _, ...revision }) => revision,
    ),
    countExcluded: await door.countExcluded(shop, { gauge: 'C0' }),
    listLoadedFiles: (await door.listLoadedFiles(shop)).map(({ loadedAt: _, ...file }) => file),
    listRecheckOutcomes: await door.listRecheckOutcomes(shop, { job: 'J000001' }),
    countOutcomes: await door.countOutcomes(shop, 'technician'),
    outcomesBySection: await door.countOutcomes(shop, 'section', { search: 'J' }),
    jobsWithoutOutcome: await door.jobsWithoutOutcome(shop),
    currentFit: await door.currentFit(shop).then((one) => one && { ...one, fittedAt: 0 }),
    fitAnswer: await door.fitAnswer(shop, 'rates'),
    fitAnswers: [...(await door.fitAnswers(shop, 'rates', ['rates', 'habits']))],
    hasFitAnswers: await door.hasFitAnswers(shop, fit),
    roundsWithoutVerdict: await door.roundsWithoutVerdict(shop, fit),
    verdictsFor: await door.verdictsFor(shop, { technician: 'T0' }),
    heightsFor: await door.heightsFor(shop, { gauge: 'C0' }),
    roundsWithoutProof: await door.roundsWithoutProof(shop, 1),
    provedHeights: await door.provedHeights(shop),
    listTrials: (await door.listTrials(shop)).map(({ id: _, createdAt: __, closedAt: ___, ...one }) => one),
    getTrial: (await door.getTrial(shop, trial))?.readings.map(({ value }) => value) ?? null,
    notTheirTrial: await door.getTrial(shop, trial + 1),
  };
}

beforeEach(async () => {
  await statement(`INSERT INTO "Shop" ("id", "name", "timeZone") VALUES (${OTHER}, 'Other shop', 'UTC')`);
});

describe('two shops in one database', () => {
  it('are told apart by every function that reads, whatever the other one is told', async () => {
    const fit = await tell(store.shop, OURS, 'ours');
    const before = await everything(store.shop, fit);
    const theirs = await tell(OTHER, THEIRS, 'theirs');
    expect(await everything(store.shop, fit)).toEqual(before);
    // And the other shop's answers are its own, not empty.
    const other = await everything(OTHER, theirs);
    expect(other.loadJobs).toEqual(collapse(THEIRS.filter(({ sheet }) => sheet === 'S0')));
    expect(other.countExcluded).toBe(1);
    for (const [name, answer] of Object.entries(before)) {
      const [ours, others] = [JSON.stringify(answer), JSON.stringify(other[name as keyof typeof other])];
      expect(others === '[]' || others === 'null', name).toBe(ours === '[]' || ours === 'null');
      expect(others, name).not.toMatch(/ours/);
    }
  });

  it('are asked about by every function of the door', () => {
    const asked = [...everything.toString().matchAll(/door\.(\w+)\(shop|\)\.(\w+)\)\(shop/g)].map(
      ([, a, b]) => a ?? b ?? '',
    );
    const told = [...`${tell.toString()}${keepSheets.toString()}`.matchAll(/\.(\w+)\)?\(shop/g)].map(
      ([, name]) => name ?? '',
    );
    const read = [...everything.toString().matchAll(/\.(\w+)\)?\(shop/g)].map(([, name]) => name ?? '');
    const names = new Set([...asked, ...told, ...read]);
    const noShop = [
      ...['addShop', 'atOneMoment', 'closeStore', 'databaseFailure', 'databaseState', 'getShop', 'listShops'],
      ...['saveShop', 'shopOfId'],
    ];
    const functions = Object.entries(door).filter(
      ([name, value]) => typeof value === 'function' && !/^[A-Z]/.test(name),
    );
    expect(
      functions
        .map(([name]) => name)
        .filter((name) => !names.has(name))
        .sort(),
    ).toEqual(noShop);
  });

  it('cannot be told of each other: a fit, a person and a setup have to be the shop’s own', async () => {
    await tell(store.shop, OURS, 'ours');
    const theirs = await tell(OTHER, THEIRS, 'theirs');
    const verdict = {
      ...ROUND,
      decidable: true,
      why: null,
      pZeroMisset: 0,
      heights: [HEIGHT],
      document: null,
    };
    await expect(door.saveRoundVerdicts(store.shop, theirs, [verdict])).rejects.toThrow(/foreign key/i);
    await door.savePeople(
      OTHER,
      [{ code: 'ONLY', name: 'Only there', role: 'technician', active: true }],
      BY_COMMAND,
    );
    await expect(door.setMissCost(store.shop, { cost: 9 }, { person: 'ONLY', via: 'page' })).rejects.toThrow(
      /nobody with the code ONLY/,
    );
    await door.saveReadings(
      OTHER,
      THEIRS.map((one) => ({ ...one, job: `X${one.job}` })),
      fileNamed('more'),
      BY_COMMAND,
    );
    const outcome = {
      job: 'XJ000000',
      setup: 'before-0',
      side: 'L',
      cause: 'body',
      by: null,
      note: null,
    } as const;
    await expect(door.recordOutcome(store.shop, outcome, BY_COMMAND)).rejects.toThrow(
      /Job XJ000000 has no setup/,
    );
    expect(await door.getJob(store.shop, 'XJ000000')).toBeNull();
  });

  it('store at the same time without losing anything', async () => {
    await Promise.all([
      door.saveReadings(store.shop, OURS, fileNamed('ours'), BY_COMMAND),
      door.saveReadings(OTHER, THEIRS, fileNamed('theirs'), BY_COMMAND),
    ]);
    expect(await door.loadJobs(store.shop)).toEqual(collapse(OURS));
    expect(await door.loadJobs(OTHER)).toEqual(collapse(THEIRS));
  });
});

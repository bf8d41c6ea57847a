import { database } from '@/lib/store/connection/database';
import type { Prisma } from '@/lib/store/generated/sqlite/client';
import type { Json, ShopId } from '@/lib/store/types';
import { atTheBay } from './at-the-bay';
import { toldOf } from './told-of';

/** Grows when the shape of the document changes. */
const FORMAT = 2;

const job = { select: { number: true } } as const;
const place = { select: { label: true, job } } as const;
const dimension = { select: { quantity: true, point: true, side: true, nominal: true } } as const;
const value = {
  repeat: true,
  revision: true,
  value: true,
  takenAt: true,
  excluded: true,
  reason: true,
  enteredAt: true,
} as const;
const traced = {
  at: true,
  via: true,
  action: true,
  kind: true,
  subject: true,
  before: true,
  after: true,
  reason: true,
  personId: true,
  concernsId: true,
} as const;

/**
 * Everything that the shop keeps about one person, as one document: to be handed to that person. Lengths in mm,
 * times in UTC. Of the account everything but its secrets.
 * @returns null where the shop has nobody of this code.
 */
export async function personalExport(shop: ShopId, code: string): Promise<Json> {
  const db = database();
  const person = await db.person.findUnique({ where: { shopId_code: { shopId: shop, code } } });
  if (person === null) return null;
  const { id, name, role, active, removedAt } = person;
  const own = { shopId: shop, personId: id };
  const [setups, changed, outcomes, verifications, missCosts, trialReadings, trace, sheets] =
    await Promise.all([
      setupsOf(shop, id),
      db.reading.findMany({
        where: own,
        select: { ...value, observation: { select: { dimension, setup: place } } },
        orderBy: [{ setupId: 'asc' }, { dimensionId: 'asc' }, ...BY_REPEAT],
      }),
      db.recheckOutcome.findMany({
        where: own,
        select: { side: true, cause: true, at: true, note: true, setup: place },
        orderBy: { id: 'asc' },
      }),
      db.gaugeVerification.findMany({
        where: own,
        select: {
          at: true,
          kind: true,
          reference: true,
          uncertainty: true,
          error: true,
          passed: true,
          note: true,
          gauge: { select: { tag: true } },
        },
        orderBy: { id: 'asc' },
      }),
      db.missCost.findMany({ where: own, select: { cost: true, at: true }, orderBy: { id: 'asc' } }),
      db.trialReading.findMany({
        where: own,
        select: { run: true, repeat: true, value: true, at: true, trial: { select: { name: true } } },
        orderBy: [{ trialId: 'asc' }, { run: 'asc' }, { repeat: 'asc' }],
      }),
      db.trace.findMany({
        where: { shopId: shop, OR: [{ personId: id }, { concernsId: id }] },
        select: traced,
        orderBy: { id: 'asc' },
      }),
      db.sheetRevision.findMany({
        where: own,
        select: { revision: true, reason: true, at: true, sheet: { select: { name: true } } },
        orderBy: [{ sheetId: 'asc' }, { revision: 'asc' }],
      }),
    ]);
  return plain({
    format: FORMAT,
    madeAt: new Date(),
    person: { code, name, role, active, removedAt },
    ...(await signingIn(shop, id)),
    setups: setups.map(({ label, observations, ...setup }) => ({
      ...placed({ label, job: setup.job }),
      ...setup.round,
      gauge: setup.gauge.tag,
      hungAt: setup.hungAt,
      readings: observations.flatMap(({ dimension: of, readings }) =>
        readings.map((reading) => ({ ...of, ...reading })),
      ),
    })),
    readingsEnteredOrChanged: changed.map(({ observation, ...reading }) => ({
      ...placed(observation.setup),
      ...observation.dimension,
      ...reading,
    })),
    outcomesRecorded: outcomes.map(({ setup, ...outcome }) => ({ ...placed(setup), ...outcome })),
    verifications: verifications.map(({ gauge, ...rest }) => ({ gauge: gauge.tag, ...rest })),
    missCostsSet: missCosts,
    trialReadings: trialReadings.map(({ trial, ...rest }) => ({ trial: trial.name, ...rest })),
    sheetsRevised: sheets.map(({ sheet, ...rest }) => ({ sheet: sheet.name, ...rest })),
    ...(await atTheBay(shop, id)),
    trace: trace.map(({ personId, concernsId, ...row }) => ({
      ...row,
      byThisPerson: personId === id,
      aboutThisPerson: concernsId === id,
    })),
    ...(await worked(shop, id, code)),
  });
}

/** Setups asked for at once: of more, the databases take no more parameters for what belongs to them. */
const SETUPS_AT_ONCE = 200;

const ofSetup = {
  id: true,
  label: true,
  hungAt: true,
  job,
  gauge: { select: { tag: true } },
  round: { select: { stage: true, attempt: true } },
  observations: {
    select: { dimension, readings: { select: value, orderBy: [{ repeat: 'asc' }, { revision: 'asc' }] } },
  },
} as const satisfies Prisma.SetupSelect;

/** Everything that one person hung and read, in the order of time. */
async function setupsOf(shop: ShopId, technicianId: number) {
  const all: Omit<Prisma.SetupGetPayload<{ select: typeof ofSetup }>, 'id'>[] = [];
  for (let last = 0; ;) {
    const some = await database().setup.findMany({
      where: { shopId: shop, technicianId, id: { gt: last } },
      select: ofSetup,
      orderBy: { id: 'asc' },
      take: SETUPS_AT_ONCE,
    });
    all.push(...some.map(({ id: _, ...setup }) => setup));
    const end = some.at(-1);
    if (end === undefined) return all.sort((a, b) => a.hungAt.getTime() - b.hungAt.getTime());
    last = end.id;
  }
}

const BY_REPEAT = [{ repeat: 'asc' as const }, { revision: 'asc' as const }];

const placed = ({ label, job: of }: { label: string; job: { number: string } }) => ({
  job: of.number,
  setup: label,
});

/** The account without its secrets, and where it is signed in. */
async function signingIn(shop: ShopId, personId: number) {
  const user = await database().user.findUnique({
    where: { shopId_personId: { shopId: shop, personId } },
    select: {
      username: true,
      createdAt: true,
      twoFactorEnabled: true,
      sessions: {
        select: { createdAt: true, expiresAt: true, userAgent: true, ipAddress: true },
        orderBy: { createdAt: 'asc' },
      },
    },
  });
  const invitations = await database().invitation.findMany({
    where: { shopId: shop, personId },
    select: { createdAt: true, expiresAt: true, usedAt: true },
    orderBy: { id: 'asc' },
  });
  const account = user && {
    signInName: user.username,
    createdAt: user.createdAt,
    secondFactor: user.twoFactorEnabled === true,
  };
  const sessions = (user?.sessions ?? []).map(({ createdAt, expiresAt, userAgent, ipAddress }) => ({
    startedAt: createdAt,
    expiresAt,
    browser: userAgent,
    address: ipAddress,
  }));
  return { account, sessions, invitations };
}

/** What was worked out about the person: outcomes of jobs, what is summed of them, and parts of the fit, of reports and plans. */
async function worked(shop: ShopId, id: number, code: string) {
  const db = database();
  const jobs = await db.jobOutcome.findMany({
    where: { shopId: shop, technicianId: id },
    select: { right: true, at: true, month: true, controlled: true, out: true, job },
    orderBy: { jobId: 'asc' },
  });
  const shares = await db.jobShare.findMany({
    where: { shopId: shop, job: { hands: { some: { technicianId: id } } } },
    select: { document: true, job },
    orderBy: { jobId: 'asc' },
  });
  const fit = await db.shopFit.findFirst({ where: { shopId: shop }, orderBy: { id: 'desc' } });
  const reports = await db.scheduledReport.findMany({ where: { shopId: shop }, orderBy: { id: 'asc' } });
  const trials = await db.trial.findMany({ where: { shopId: shop }, orderBy: { id: 'asc' } });
  const told = (document: unknown) => toldOf(document as Json, code);
  return {
    jobsThatCountToThem: jobs.map(({ job: of, ...outcome }) => ({ job: of.number, ...outcome })),
    habits: shares.map(({ job: of, document }) => ({
      job: of.number,
      told: told(withTallies(document as Json)),
    })),
    figures: fit && { at: fit.fittedAt, figures: told(fit.figures), learned: told(fit.parameters) },
    reports: reports.map(({ dueAt, document }) => ({ dueAt, told: told(document) })),
    trials: trials.map(({ name, plan }) => ({ trial: name, told: told(plan) })),
  };
}

/**
 * The tallies of what a job adds are kept as texts within it (`lib/refresh/kept-share.ts`): they are told as data. Until
 * a shop has learned by this program they may still be data.
 */
function withTallies(document: Json): Json {
  const { tallies, ...share } = document as { tallies: [technician: string, tally: Json][] };
  const plainly = (tally: Json) => (typeof tally === 'string' ? (JSON.parse(tally) as Json) : tally);
  return { ...share, tallies: tallies.map(([whose, tally]) => [whose, plainly(tally)]) };
}

/** As JSON keeps it: times become text. */
const plain = (document: unknown): Json => JSON.parse(JSON.stringify(document)) as Json;

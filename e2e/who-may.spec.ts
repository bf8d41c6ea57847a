import { readdirSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { expect, test, type APIRequestContext } from '@playwright/test';
import { enterOtherShop } from './other-shop';
import { NOBODY, SIGNED_IN } from './signed-in';

/**
 * Every route of the program, and who may have it. The walk below finds the routes in the folder itself: one that
 * is not in this table fails the test.
 */
/** `token`: by an API token alone; no session opens it. */
type Who = 'everybody' | 'signed in' | 'trainer' | 'manager' | 'token';
interface Route {
  who: Who;
  /** With `:own` and `:others` for a job of the technician and one without. */
  ask: string;
  form?: Record<string, string>;
}

const STAGED = '00000000-0000-4000-8000-000000000000';
const height = '["B1-01","L"]';
const ROUTES: Record<string, Route> = {
  '(overview)/page.tsx': { who: 'signed in', ask: '/' },
  'account/export/route.ts': { who: 'signed in', ask: '/account/export' },
  'account/page.tsx': { who: 'signed in', ask: '/account' },
  'account/password/route.ts': {
    who: 'signed in',
    ask: '/account/password',
    form: { present: 'x', next: 'y' },
  },
  'account/second-factor/page.tsx': { who: 'signed in', ask: '/account/second-factor' },
  'account/second-factor/step/route.ts': {
    who: 'signed in',
    ask: '/account/second-factor/step',
    form: { step: 'begin', proof: 'x' },
  },
  'account/sessions/route.ts': { who: 'signed in', ask: '/account/sessions', form: { only: 'none' } },
  'api/v1/jobs/[job]/route.ts': { who: 'token', ask: '/api/v1/jobs/:own' },
  'api/v1/measurements/route.ts': { who: 'token', ask: '/api/v1/measurements' },
  'api/v1/openapi.json/route.ts': { who: 'everybody', ask: '/api/v1/openapi.json' },
  'api/v1/report/route.ts': { who: 'token', ask: '/api/v1/report' },
  'api/v1/reports/route.ts': { who: 'token', ask: '/api/v1/reports' },
  'api/v1/reports/[id]/route.ts': { who: 'token', ask: '/api/v1/reports/1' },
  'bay/page.tsx': { who: 'signed in', ask: '/bay' },
  'bay/helper/page.tsx': { who: 'signed in', ask: '/bay/helper' },
  'bay/worker.js/route.ts': { who: 'everybody', ask: '/bay/worker.js' },
  'bay/begin/route.ts': { who: 'signed in', ask: '/bay/begin', form: { job: '' } },
  'bay/[round]/page.tsx': { who: 'signed in', ask: '/bay/999999' },
  'bay/[round]/entries/route.ts': { who: 'signed in', ask: '/bay/999999/entries' },
  'bay/[round]/knowledge/route.ts': { who: 'signed in', ask: '/bay/999999/knowledge' },
  'calibration/page.tsx': { who: 'signed in', ask: '/calibration' },
  'cautions/page.tsx': { who: 'everybody', ask: '/cautions' },
  'figures/gauges/download/route.ts': { who: 'signed in', ask: '/figures/gauges/download' },
  'figures/gauges/picture/route.ts': { who: 'signed in', ask: '/figures/gauges/picture' },
  'figures/technicians/download/route.ts': { who: 'trainer', ask: '/figures/technicians/download' },
  'figures/technicians/picture/route.ts': {
    who: 'trainer',
    ask: '/figures/technicians/picture?of=bias',
  },
  'gauges/(list)/page.tsx': { who: 'signed in', ask: '/gauges' },
  'gauges/[tag]/page.tsx': { who: 'signed in', ask: '/gauges/:gauge' },
  'habits/page.tsx': { who: 'trainer', ask: '/habits' },
  'habits/[habit]/page.tsx': { who: 'signed in', ask: '/habits/low-hanger' },
  'habits/download/route.ts': { who: 'trainer', ask: '/habits/download' },
  'habits/picture/route.ts': { who: 'trainer', ask: '/habits/picture' },
  'gauges/[tag]/dropped/route.ts': { who: 'signed in', ask: '/gauges/NONE/dropped', form: { note: '' } },
  'gauges/[tag]/look/route.ts': { who: 'trainer', ask: '/gauges/NONE/look', form: { looks: 'nonsense' } },
  'gauges/[tag]/verify/route.ts': { who: 'trainer', ask: '/gauges/NONE/verify', form: { kind: 'nonsense' } },
  'health/route.ts': { who: 'everybody', ask: '/health' },
  'health/live/route.ts': { who: 'everybody', ask: '/health/live' },
  'invitation/[token]/page.tsx': { who: 'everybody', ask: '/invitation/made-up' },
  'invitation/[token]/take/route.ts': {
    who: 'everybody',
    ask: '/invitation/made-up/take',
    form: { signInName: 'somebody', password: 'seven pins along the sill' },
  },
  'jobs/(list)/page.tsx': { who: 'signed in', ask: '/jobs' },
  'jobs/[job]/page.tsx': { who: 'signed in', ask: '/jobs/:own' },
  'jobs/[job]/evidence/page.tsx': { who: 'signed in', ask: '/jobs/:own/evidence?round=before-1' },
  'jobs/[job]/evidence/outcome/route.ts': {
    who: 'signed in',
    ask: '/jobs/:own/evidence/outcome',
    form: { round: 'before-1', height, cause: 'nonsense' },
  },
  'jobs/[job]/picture/route.ts': { who: 'signed in', ask: '/jobs/:own/picture' },
  'jobs/[job]/record/route.ts': { who: 'signed in', ask: '/jobs/:own/record' },
  'jobs/[job]/readings/page.tsx': { who: 'signed in', ask: '/jobs/:own/readings' },
  'jobs/[job]/readings/revise/route.ts': {
    who: 'signed in',
    ask: '/jobs/:own/readings/revise',
    form: { what: 'nonsense' },
  },
  'jobs/download/route.ts': { who: 'signed in', ask: '/jobs/download?job=:own' },
  'load/page.tsx': { who: 'trainer', ask: '/load' },
  'load/upload/route.ts': { who: 'trainer', ask: '/load/upload?name=x.csv', form: { job: 'x' } },
  'load/[file]/page.tsx': { who: 'trainer', ask: `/load/${STAGED}` },
  'load/[file]/confirm/route.ts': { who: 'trainer', ask: `/load/${STAGED}/confirm`, form: {} },
  'method/page.tsx': { who: 'signed in', ask: '/method' },
  'rates/page.tsx': { who: 'trainer', ask: '/rates' },
  'rates/download/route.ts': { who: 'trainer', ask: '/rates/download?by=gauge' },
  'rates/error/route.ts': { who: 'trainer', ask: '/rates/error' },
  'rates/jobs/page.tsx': { who: 'trainer', ask: '/rates/jobs?group=QUI' },
  'rates/jobs/download/route.ts': { who: 'trainer', ask: '/rates/jobs/download?group=QUI' },
  'rates/letter/route.ts': { who: 'trainer', ask: '/rates/letter' },
  'rates/picture/route.ts': { who: 'trainer', ask: '/rates/picture' },
  'rates/signals/page.tsx': { who: 'trainer', ask: '/rates/signals' },
  'rates/signals/download/route.ts': { who: 'trainer', ask: '/rates/signals/download' },
  'rates/signals/picture/route.ts': {
    who: 'trainer',
    ask: '/rates/signals/picture?series=right-first-time-shop',
  },
  'settings/page.tsx': { who: 'manager', ask: '/settings' },
  'settings/shop/route.ts': {
    who: 'manager',
    ask: '/settings/shop',
    form: { shopName: ' ', timeZone: 'UTC' },
  },
  'settings/miss-cost/route.ts': { who: 'manager', ask: '/settings/miss-cost', form: { cost: '9' } },
  'settings/people/page.tsx': { who: 'manager', ask: '/settings/people' },
  'settings/people/export/route.ts': { who: 'manager', ask: '/settings/people/export?code=QUI' },
  'settings/people/remove/route.ts': { who: 'manager', ask: '/settings/people/remove', form: { code: '' } },
  'settings/people/save/route.ts': {
    who: 'manager',
    ask: '/settings/people/save',
    form: { code: '', name: '', role: 'manager', active: 'yes' },
  },
  'settings/people/invite/route.ts': {
    who: 'manager',
    ask: '/settings/people/invite',
    form: { code: 'NOBODY' },
  },
  'settings/people/sign-out/route.ts': {
    who: 'manager',
    ask: '/settings/people/sign-out',
    form: { code: 'NOBODY' },
  },
  'metrics/route.ts': { who: 'token', ask: '/metrics' },
  'settings/schedule/route.ts': { who: 'manager', ask: '/settings/schedule', form: { every: 'nonsense' } },
  'settings/schedule/report/[id]/route.ts': { who: 'manager', ask: '/settings/schedule/report/1' },
  'settings/tokens/page.tsx': { who: 'manager', ask: '/settings/tokens' },
  'settings/tokens/make/route.ts': { who: 'manager', ask: '/settings/tokens/make', form: { name: '' } },
  'settings/tokens/revoke/route.ts': { who: 'manager', ask: '/settings/tokens/revoke', form: { id: '1' } },
  'settings/trace/page.tsx': { who: 'manager', ask: '/settings/trace' },
  'sheets/page.tsx': { who: 'signed in', ask: '/sheets' },
  'sheets/[sheet]/page.tsx': { who: 'signed in', ask: '/sheets/Coupe' },
  'sheets/[sheet]/amend/route.ts': {
    who: 'trainer',
    ask: '/sheets/Coupe/amend',
    form: { do: 'save', revision: '1' },
  },
  'sheets/[sheet]/copy/route.ts': { who: 'trainer', ask: '/sheets/Coupe/copy', form: { name: '' } },
  'sheets/[sheet]/correct/page.tsx': { who: 'trainer', ask: '/sheets/Coupe/correct' },
  'sheets/[sheet]/download/route.ts': { who: 'signed in', ask: '/sheets/Coupe/download' },
  'sheets/[sheet]/retire/route.ts': { who: 'trainer', ask: '/sheets/Coupe/retire', form: { retired: 'x' } },
  'sheets/new/enter/page.tsx': { who: 'trainer', ask: '/sheets/new/enter' },
  'sheets/new/keep/route.ts': { who: 'trainer', ask: '/sheets/new/keep', form: { do: 'save' } },
  'sheets/new/load/route.ts': { who: 'trainer', ask: '/sheets/new/load', form: { file: 'x' } },
  'sign-in/page.tsx': { who: 'everybody', ask: '/sign-in' },
  'sign-in/try/route.ts': {
    who: 'everybody',
    ask: '/sign-in/try',
    form: { name: 'nobody', password: 'wrong' },
  },
  'sign-in/code/page.tsx': { who: 'everybody', ask: '/sign-in/code' },
  'sign-in/code/try/route.ts': { who: 'everybody', ask: '/sign-in/code/try', form: { code: 'x' } },
  'sign-out/route.ts': { who: 'everybody', ask: '/sign-out', form: {} },
  'technicians/(list)/page.tsx': { who: 'trainer', ask: '/technicians' },
  'technicians/[code]/page.tsx': { who: 'signed in', ask: '/technicians/QUI' },
  'technicians/[code]/download/route.ts': { who: 'signed in', ask: '/technicians/QUI/download' },
  'technicians/[code]/sheet/route.ts': { who: 'signed in', ask: '/technicians/QUI/sheet' },
  'technicians/[code]/picture/route.ts': {
    who: 'signed in',
    ask: '/technicians/QUI/picture?of=setting',
  },
  'theme/route.ts': { who: 'everybody', ask: '/theme', form: { theme: 'dark' } },
  'speech/route.ts': { who: 'everybody', ask: '/speech', form: { units: 'mm' } },
  'training/page.tsx': { who: 'trainer', ask: '/training' },
  'trials/page.tsx': { who: 'signed in', ask: '/trials' },
  'trials/new/page.tsx': { who: 'trainer', ask: '/trials/new' },
  'trials/new/create/route.ts': { who: 'trainer', ask: '/trials/new/create', form: { name: '' } },
  'trials/[id]/page.tsx': { who: 'signed in', ask: '/trials/999999' },
  'trials/[id]/close/route.ts': { who: 'trainer', ask: '/trials/999999/close', form: {} },
  'trials/[id]/figures/route.ts': { who: 'signed in', ask: '/trials/999999/figures' },
  'trials/[id]/picture/route.ts': { who: 'signed in', ask: '/trials/999999/picture' },
  'trials/[id]/readings/route.ts': { who: 'trainer', ask: '/trials/999999/readings' },
  'trials/[id]/run/page.tsx': { who: 'signed in', ask: '/trials/999999/run' },
  'trials/[id]/run/correct/route.ts': {
    who: 'signed in',
    ask: '/trials/999999/run/correct',
    form: { place: '1 1', value: '1', reason: 'x' },
  },
  'trials/[id]/run/enter/route.ts': {
    who: 'signed in',
    ask: '/trials/999999/run/enter',
    form: { run: '1', repeat: '1', value: '1' },
  },
  'trials/[id]/sheet/page.tsx': { who: 'signed in', ask: '/trials/999999/sheet' },
  'what-if/page.tsx': { who: 'trainer', ask: '/what-if' },
  'what-if/download/route.ts': { who: 'trainer', ask: '/what-if/download' },
  'what-if/picture/route.ts': { who: 'trainer', ask: '/what-if/picture' },
  'welcome/page.tsx': { who: 'everybody', ask: '/welcome' },
  'welcome/make/route.ts': { who: 'everybody', ask: '/welcome/make', form: { key: 'made-up' } },
};

/** Signing the test's own browsers out, or counting as failures, would disturb the other tests. */
const ONLY_AS_NOBODY = ['sign-out/route.ts', 'sign-in/try/route.ts', 'sign-in/code/try/route.ts'];

const ROLES = ['technician', 'trainer', 'manager'] as const;
const OPEN_TO: Record<Who, readonly (typeof ROLES)[number][]> = {
  everybody: ROLES,
  'signed in': ROLES,
  trainer: ['trainer', 'manager'],
  manager: ['manager'],
  token: [],
};

const routesOfTheFolder = () =>
  readdirSync('app', { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /(^|\/)(page\.tsx|route\.ts)$/.test(path) && !/(^|\/)_/.test(path))
    .sort();

/** The lines of a measurement file, by their columns. */
const measurements = (text: string): Record<string, string>[] => parse(text, { columns: true, bom: true });

interface Names {
  own: string;
  others: string;
  gauge: string;
}

/** A job in which the technician hung a gauge, one in which they did not, and a gauge. */
async function namesFrom(manager: APIRequestContext): Promise<Names> {
  const readings = measurements(await (await manager.get('/jobs/download')).text());
  const jobs = new Map<string, Set<string>>();
  for (const { job = '', technician = '' } of readings)
    jobs.set(job, (jobs.get(job) ?? new Set<string>()).add(technician));
  const find = (test: (hands: Set<string>) => boolean) =>
    [...jobs].find(([, hands]) => test(hands))?.[0] ?? '';
  return {
    own: find((hands) => hands.has('QUI')),
    others: find((hands) => !hands.has('QUI')),
    gauge: readings[0]?.gauge ?? '',
  };
}

const send = (context: APIRequestContext, { ask, form }: Route, { own, others, gauge }: Names) => {
  const place = ask.replace(':own', own).replace(':others', others).replace(':gauge', gauge);
  return form === undefined
    ? context.get(place, { maxRedirects: 0 })
    : context.post(place, { form, maxRedirects: 0 });
};

test('every route is in the table, and the table names no other', () => {
  expect(routesOfTheFolder()).toEqual(Object.keys(ROUTES).sort());
});

test('each role gets what is its own and nobody anything, on every route', async ({
  playwright,
  baseURL,
}) => {
  test.setTimeout(180_000);
  const as = (storageState: string | typeof NOBODY) =>
    playwright.request.newContext({ ...(baseURL !== undefined && { baseURL }), storageState });
  const names = await namesFrom(await as(SIGNED_IN.manager));
  const nobody = await as(NOBODY);
  for (const [path, route] of Object.entries(ROUTES)) {
    const { status, place } = await answer(send(nobody, route, names));
    if (route.who === 'everybody') expect([200, 303, 307], `${path}, nobody`).toContain(status);
    else if (path.endsWith('page.tsx')) {
      expect(status, `${path}, nobody`).toBe(307);
      expect(place, `${path}, nobody`).toMatch(/^\/sign-in/);
    } else expect(status, `${path}, nobody`).toBe(401);
  }
  for (const role of ROLES) {
    const context = await as(SIGNED_IN[role]);
    for (const [path, route] of Object.entries(ROUTES)) {
      if (ONLY_AS_NOBODY.includes(path)) continue;
      const { status } = await answer(send(context, route, names));
      const told = `${path}, ${role}`;
      if (OPEN_TO[route.who].includes(role)) expect([200, 201, 303, 307, 404], told).toContain(status);
      else expect(status, told).toBe(route.who === 'token' ? 401 : 403);
    }
  }
});

async function answer(asked: ReturnType<APIRequestContext['get']>) {
  const response = await asked;
  return { status: response.status(), place: response.headers().location ?? '' };
}

test.describe('a technician', () => {
  test.use({ storageState: SIGNED_IN.technician });

  test('sees no colleague’s page, job, evidence or readings', async ({ playwright, baseURL, request }) => {
    const manager = await playwright.request.newContext({
      ...(baseURL !== undefined && { baseURL }),
      storageState: SIGNED_IN.manager,
    });
    const { others } = await namesFrom(manager);
    for (const place of [
      '/technicians/FEL',
      '/technicians/FEL/download',
      '/technicians/FEL/sheet',
      '/technicians/FEL/picture?of=setting',
      `/jobs/${others}/readings`,
      `/jobs/${others}/record`,
      `/jobs/${others}/picture`,
      `/jobs/${others}`,
      `/jobs/${others}/evidence?round=before-1`,
    ])
      expect((await request.get(place)).status(), place).toBe(404);
    const one = await (await request.get(`/jobs/download?job=${others}`)).text();
    expect(measurements(one)).toEqual([]);

    const readings = measurements(await (await request.get('/jobs/download')).text());
    expect(new Set(readings.map(({ technician }) => technician))).toEqual(new Set(['QUI']));
    expect(await (await request.get(`/jobs?search=${others}`)).text()).not.toContain(`/jobs/${others}"`);
    expect(await (await request.get('/jobs?technician=FEL')).text()).toContain('0 of');
  });

  test('cannot record an outcome in a round of others', async ({ playwright, baseURL, request }) => {
    const manager = await playwright.request.newContext({
      ...(baseURL !== undefined && { baseURL }),
      storageState: SIGNED_IN.manager,
    });
    const { others } = await namesFrom(manager);
    const answered = await request.post(`/jobs/${others}/evidence/outcome`, {
      form: { round: 'before-1', height, cause: 'gauge' },
      maxRedirects: 0,
    });
    expect(answered.headers().location).toContain('outcome=unknown');
    const page = await (await manager.get(`/jobs/${others}/evidence?round=before-1`)).text();
    expect(page).toContain('Nothing is on record for this round yet.');
  });

  test('sees the own figures beside the shop’s band, and no other code on that page', async ({ request }) => {
    const page = await (await request.get('/technicians/QUI')).text();
    expect(page).toContain('The shop, reading again');
    for (const code of ['FEL', 'MAR', 'ASH', 'WIN', 'THI', 'LAR', 'BEC'])
      expect(page, code).not.toMatch(new RegExp(`\\b${code}\\b`));
  });
});

test('the manager of another shop in the same database sees nothing of this one', async ({
  playwright,
  baseURL,
}, { config }) => {
  const as = (storageState: string | typeof NOBODY) =>
    playwright.request.newContext({ ...(baseURL !== undefined && { baseURL }), storageState });
  const names = await namesFrom(await as(SIGNED_IN.manager));
  const other = await as(NOBODY);
  await enterOtherShop(config, other, 'Other Quay');
  for (const place of [
    `/jobs/${names.own}`,
    `/jobs/${names.own}/evidence?round=before-1`,
    '/technicians/QUI',
    `/gauges/${names.gauge}`,
    '/sheets/Coupe',
    '/sheets/Coupe/download',
  ])
    expect((await other.get(place)).status(), place).toBe(404);
  expect(measurements(await (await other.get('/jobs/download')).text())).toEqual([]);
  for (const place of [
    '/',
    '/jobs',
    '/technicians',
    '/training',
    '/gauges',
    '/sheets',
    '/load',
    '/settings',
    '/settings/people',
  ]) {
    const page = await (await other.get(place)).text();
    for (const name of [names.own, names.gauge, 'Quillow', 'Thistledown'])
      expect(page, `${name} on ${place}`).not.toContain(name);
  }
  const outcome = await other.post(`/jobs/${names.own}/evidence/outcome`, {
    form: { round: 'before-1', height, cause: 'gauge' },
    maxRedirects: 0,
  });
  expect(outcome.headers().location).toContain('outcome=unknown');
  const told = await (await other.post('/settings/people/invite', { form: { code: 'QUI' } })).text();
  expect(told).toContain('Nobody with the code QUI works in this shop');
});

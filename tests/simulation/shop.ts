import type { Cause, Job, Observation, Round, Section, Setup, Side, Stage } from '@/lib/measure/types';
import { Random } from './random';

/** A simulated shop by the model that the inference assumes, with everything that a reading hides. */
export interface SimulatedShop {
  jobs: Job[];
  technicians: { code: string; reading: number; setting: number; bias: number; missetRate: number }[];
  gauges: { tag: string; bias: number; mark: number }[];
  /** By `job stage attempt setup side`. */
  truth: Map<string, { cause: Cause; gauge: number; body: number; zero: boolean }>;
}

export interface ShopOptions {
  seed: number;
  jobs: number;
  technicians?: number;
  setting?: number;
  heavy?: boolean;
  causes?: boolean;
}

interface Place {
  x: number;
  section: Section;
  zero: boolean;
  nominal: number;
  half: number;
  letters: Record<Side, string>;
}

const TOLERANCE = 3;
const SIDES: Side[] = ['L', 'R'];

/** Sizes of mis-sets and of damage between 3.5 and 19 mm, smaller ones likelier. */
const size = (random: Random): number =>
  (random.chance(0.5) ? random.uniform(4, 9) : random.uniform(4, 19)) * (random.chance(0.5) ? 1 : -1);

export function simulateShop(options: ShopOptions): SimulatedShop {
  const random = new Random(options.seed);
  const spread = (): number => Math.exp(random.normal(0, 0.3));
  const technicians = Array.from({ length: options.technicians ?? 8 }, (_, i) => ({
    code: `T${String(i + 1).padStart(2, '0')}`,
    reading: 0.5 * spread(),
    setting: (options.setting ?? 0.8) * spread(),
    bias: random.normal(0, 0.5),
    missetRate: Math.min(0.3, 0.06 * Math.exp(random.normal(-0.2, 0.6))),
  }));
  const gauges = Array.from({ length: 8 }, (_, i) => ({
    tag: `C${String(i + 1).padStart(2, '0')}`,
    bias: random.normal(0, 0.3),
    mark: Math.round(random.uniform(12, 30)),
  }));
  const sheets = Array.from({ length: 12 }, (_, i) => ({ name: `S${i + 1}`, places: places(random) }));
  const shop: SimulatedShop = { jobs: [], technicians, gauges, truth: new Map() };
  for (let j = 0; j < options.jobs; j++) {
    const sheet = random.pick(sheets);
    const name = `J${String(j + 1).padStart(6, '0')}`;
    const time = 1_700_000_000_000 + j * 86_400_000;
    const damage = damaged(random, sheet.places);
    const job: Job = { job: name, sheet: sheet.name, rounds: [] };
    const run = (stage: Stage, attempt: number, body: Map<string, number>, hours: number): void => {
      job.rounds.push(
        measure(
          random,
          shop,
          options,
          { job: name, sheet: sheet.name, stage, attempt },
          sheet.places,
          body,
          damage,
          time + hours * 3_600_000,
        ),
      );
    };
    run('before', 1, damage, 0);
    const after = new Map<string, number>();
    for (const place of sheet.places) {
      for (const side of SIDES) {
        const key = `${place.x} ${side}`;
        const leftover =
          (damage.get(key) ?? 0) !== 0 && random.chance(0.08)
            ? random.uniform(3.5, 7) * (random.chance(0.5) ? 1 : -1)
            : 0;
        after.set(key, leftover + random.normal(0, 0.8));
      }
    }
    run('after', 1, after, 10);
    if (random.chance(0.6)) run('after', 2, after, 20);
    shop.jobs.push(job);
  }
  return shop;
}

function places(random: Random): Place[] {
  const count = 4 + random.weighted([0.7, 0.2, 0.1]);
  const x: [number, Section, boolean][] = [
    [0, 'front', false],
    [random.uniform(1000, 1200), 'center', true],
    [random.uniform(2500, 2700), 'center', true],
    [random.uniform(3000, 3200), 'rear', false],
  ];
  if (count > 4) x.push([random.uniform(3500, 3900), 'rear', false]);
  if (count > 5) x.push([random.uniform(400, 700), 'front', false]);
  return x
    .sort((a, b) => a[0] - b[0])
    .map(([at, section, zero], i) => ({
      x: Math.round(at),
      section,
      zero,
      nominal: Math.round(random.uniform(120, 420)),
      half: Math.round(random.uniform(400, 560)),
      letters: { L: String.fromCharCode(65 + 2 * i), R: String.fromCharCode(66 + 2 * i) },
    }));
}

const PATTERNS: [number, number][] = [
  [1, 0],
  [0, 1],
  [1, 1],
];

function damaged(random: Random, sheet: Place[]): Map<string, number> {
  const zone = random.weighted([0.35, 0.25, 0.15, 0.15, 0.1]);
  const rates: Record<Section, number>[] = [
    { front: 0.75, center: 0.03, rear: 0.08 },
    { front: 0.08, center: 0.03, rear: 0.75 },
    { front: 0.35, center: 0.03, rear: 0.35 },
    { front: 0.35, center: 0.03, rear: 0.35 },
    { front: 0.02, center: 0.02, rear: 0.02 },
  ];
  const sides = [
    [0.3, 0.3, 0.4],
    [0.3, 0.3, 0.4],
    [0.75, 0.05, 0.2],
    [0.05, 0.75, 0.2],
    [0.4, 0.4, 0.2],
  ];
  const map = new Map<string, number>();
  for (const place of sheet) {
    const hit = random.chance(rates[zone]?.[place.section] ?? 0);
    const pattern = PATTERNS[random.weighted(sides[zone] ?? [])] ?? [0, 0];
    const common = size(random);
    SIDES.forEach((side, s) => {
      const own = pattern[s] === 1 ? common * random.uniform(0.7, 1.3) : 0;
      map.set(`${place.x} ${side}`, hit ? own : 0);
    });
  }
  return map;
}

function misset(
  random: Random,
  rate: number,
  nominal: number,
  sheet: Place[],
  clearance: number,
  mark: number,
): [number, number] {
  if (!random.chance(rate)) return [0, 0];
  const value = size(random);
  const sign = random.chance(0.5) ? 1 : -1;
  switch (random.weighted([0.45, 0.19, 0.19, 0.05, 0.04, 0.05, 0.05])) {
    case 0:
      return [value, value];
    case 1:
      return [value, 0];
    case 2:
      return [0, value];
    case 3:
      return [sign * mark, sign * mark];
    case 4: {
      const other = random.pick(sheet).nominal - nominal;
      return [other, other];
    }
    case 5:
      return random.chance(0.5) ? [sign * 10, 0] : [0, sign * 10];
    default:
      return clearance === 0
        ? [value, value]
        : random.chance(0.6)
          ? [-clearance, -clearance]
          : [clearance, clearance];
  }
}

function measure(
  random: Random,
  shop: SimulatedShop,
  options: ShopOptions,
  head: Pick<Round, 'job' | 'sheet' | 'stage' | 'attempt'>,
  sheet: Place[],
  body: Map<string, number>,
  damage: Map<string, number>,
  start: number,
): Round {
  const clearance = random.pick([0, 0, 0, 100, 100, 100, 100, 50, 80, 150]);
  const technician = random.pick(shop.technicians);
  const round: Round = { ...head, clearance, setups: [] };
  let minute = 0;
  let label = 0;
  const zeros = sheet.filter((place) => place.zero);
  const [a, b] = zeros;
  if (!a || !b) throw new RangeError('A sheet needs two zero stations.');
  /** Setting of the zero gauge last hung, by station and side; and each place's last setup. */
  const set = new Map<string, number>();
  const noise = (t: SimulatedShop['technicians'][number]): number =>
    t.reading * (options.heavy ? random.heavy(4) : random.normal());
  const observe = (
    t: SimulatedShop['technicians'][number],
    deviation: number,
    rest: Omit<Observation, 'n' | 'deviation' | 'ss' | 'takenAt' | 'cause'>,
  ): Observation => {
    const n = 1 + random.weighted([0.5, 0.3, 0.2]);
    const values = Array.from({ length: n }, () => Math.round((deviation + noise(t)) * 10) / 10);
    const mean = values.reduce((sum, v) => sum + v, 0) / n;
    return {
      ...rest,
      n,
      deviation: mean,
      ss: values.reduce((sum, v) => sum + (v - mean) ** 2, 0),
      cause: null,
      takenAt: start + 60_000 * minute++,
    };
  };
  const hang = (place: Place, t: SimulatedShop['technicians'][number]): boolean => {
    const gauge = random.pick(shop.gauges);
    const common = random.normal(0, t.setting * Math.SQRT1_2);
    const gross = misset(random, t.missetRate, place.nominal, sheet, clearance, gauge.mark);
    const setup: Setup = {
      label: `${head.stage[0] ?? ''}${head.attempt}-${String(++label).padStart(2, '0')}`,
      technician: t.code,
      gauge: gauge.tag,
      gaugeKind: 'centering',
      takenAt: start + 60_000 * minute,
      observations: [],
    };
    let out = false;
    SIDES.forEach((side, s) => {
      const own = common + random.normal(0, t.setting * Math.SQRT1_2) + (gross[s] ?? 0);
      const key = `${place.x} ${side}`;
      const bodyAt = body.get(key) ?? 0;
      let gaugePart = own;
      let bodyPart = bodyAt;
      let reading = 0;
      if (place.zero) set.set(key, own);
      else {
        const wa = (b.x - place.x) / (b.x - a.x);
        const wb = (place.x - a.x) / (b.x - a.x);
        gaugePart -= wa * (set.get(`${a.x} ${side}`) ?? 0) + wb * (set.get(`${b.x} ${side}`) ?? 0);
        bodyPart -= wa * (body.get(`${a.x} ${side}`) ?? 0) + wb * (body.get(`${b.x} ${side}`) ?? 0);
        reading = gaugePart + bodyPart + t.bias + gauge.bias;
      }
      const seen = observe(t, reading, {
        quantity: 'height',
        point: place.letters[side],
        side,
        section: place.section,
        station: place.x,
        zero: place.zero,
        nominal: place.nominal,
        tolerance: TOLERANCE,
      });
      const g = Math.abs(gaugePart) > TOLERANCE;
      const d = Math.abs(bodyPart) > TOLERANCE;
      const cause: Cause = g ? (d ? 'both' : 'gauge') : d ? 'body' : 'neither';
      if (options.causes === true && random.chance(0.1)) seen.cause = cause;
      shop.truth.set(`${head.job} ${head.stage} ${head.attempt} ${setup.label} ${side}`, {
        cause,
        gauge: gaugePart,
        body: bodyPart,
        zero: place.zero,
      });
      out ||= Math.abs(seen.deviation) > TOLERANCE;
      setup.observations.push(seen);
    });
    round.setups.push(setup);
    return out;
  };
  const others = sheet.filter((place) => !place.zero);
  for (const place of zeros) hang(place, technician);
  const doubtful = others.filter((place) => hang(place, technician));
  for (const place of others) {
    if (!random.chance(doubtful.includes(place) ? 0.3 : 0.05)) continue;
    for (let k = 0; k <= (random.chance(0.3) ? 1 : 0); k++)
      hang(place, random.chance(0.3) ? random.pick(shop.technicians) : technician);
  }
  if (random.chance(0.08)) {
    hang(random.pick(zeros), technician);
    for (const place of others) hang(place, technician);
  }
  lengths(
    random,
    round,
    technician,
    sheet,
    head.stage === 'before' ? damage : body,
    observe,
    () => `${head.stage[0] ?? ''}${head.attempt}-${String(++label).padStart(2, '0')}`,
  );
  return round;
}

function lengths(
  random: Random,
  round: Round,
  t: SimulatedShop['technicians'][number],
  sheet: Place[],
  body: Map<string, number>,
  observe: (
    t: SimulatedShop['technicians'][number],
    deviation: number,
    rest: Omit<Observation, 'n' | 'deviation' | 'ss' | 'takenAt' | 'cause'>,
  ) => Observation,
  label: () => string,
): void {
  for (let i = 0; i + 1 < sheet.length; i++) {
    const p = sheet[i];
    const q = sheet[i + 1];
    if (!p || !q) continue;
    for (const [from, to] of [
      ['L', 'L'],
      ['R', 'R'],
      ['L', 'R'],
      ['R', 'L'],
    ] as [Side, Side][]) {
      if (!(p.zero && q.zero) && !random.chance(0.5)) continue;
      const hit =
        Math.abs(body.get(`${p.x} ${from}`) ?? 0) > 3 || Math.abs(body.get(`${q.x} ${to}`) ?? 0) > 3;
      const change = hit && random.chance(0.7) ? random.uniform(2, 12) * (random.chance(0.5) ? 1 : -1) : 0;
      const nominal = Math.round(Math.hypot(q.x - p.x, from === to ? p.half - q.half : p.half + q.half));
      const seen = observe(t, change + random.normal(0, t.setting), {
        quantity: 'length',
        point: `${p.letters[from]}-${q.letters[to]}`,
        side: null,
        section: p.zero && q.zero ? 'center' : p.zero ? q.section : p.section,
        station: null,
        zero: false,
        nominal,
        tolerance: TOLERANCE,
      });
      round.setups.push({
        label: label(),
        technician: t.code,
        gauge: 'M01',
        gaugeKind: 'tram',
        takenAt: seen.takenAt,
        observations: [seen],
      });
    }
  }
}

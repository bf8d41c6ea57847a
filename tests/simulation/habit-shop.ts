import { collapse, type GaugeKind, type Job, type Reading, type Section, type Side } from '@/lib/measure';
import type { HeightVerdict, RoundVerdict } from '@/lib/assess';
import { firstReadings, type HabitTally } from '@/lib/assess/habits';
import { tallyShop } from './tally-shop';
import { Random } from './random';

/** How one hand works; what is left out is ordinary. Shares and rates from 0 to 1, sizes in mm. */
export interface HandHabits {
  /** Rates per setup. */
  forgetsClearance?: number;
  otherMark?: number;
  carelessZero?: number;
  /** Left hangers away from the zero stations hang lower by this. */
  leftLow?: number;
  /** Heights read this much more with every setup of a round. */
  drift?: number;
  /** With this gauge heights read this much more. */
  withGauge?: { gauge: string; more: number };
  /** Share of readings taken to the coarser step. */
  halves?: number;
  /** Share of readings within a millimetre of the sheet value that are written down as the sheet value. */
  drawn?: number;
  /** Share of repeats copied from the reading before. */
  copied?: number;
  /** Chance that a height out of tolerance is hung again. */
  rehangs?: number;
  /** Share of rounds that begin with heights. */
  heightsFirst?: number;
  /** Difference of the pointers' lengths. */
  unequalPointers?: number;
  pointerWidth?: number;
  reading?: number;
}

export interface HabitShopOptions {
  seed: number;
  jobs: number;
  hands: Record<string, HandHabits>;
}

export interface HabitShop {
  readings: Reading[];
  jobs: Job[];
  /** Verdicts of somebody who knows the truth. */
  verdicts: RoundVerdict[];
}

interface Hand extends Required<Omit<HandHabits, 'withGauge'>> {
  code: string;
  setting: number;
  bias: number;
  missetRate: number;
  withGauge: { gauge: string; more: number } | null;
}

interface Station {
  x: number;
  section: Section;
  zero: boolean;
  nominal: number;
  letters: [string, string];
}

const STEP: Record<GaugeKind, [number, number]> = {
  centering: [0.1, 0.5],
  'digital-tram': [0.1, 0.5],
  tram: [0.5, 1],
  tracking: [0.5, 1],
  strut: [0.5, 1],
  tape: [1, 5],
};
const GAUGES = ['C1', 'C2', 'C3', 'C4', 'C5'].map((tag) => ({ tag, kind: 'centering' as const }));
const STRUT = { tag: 'S1', kind: 'strut' as const };
const TRAMS = [
  { tag: 'M1', kind: 'tram' as const },
  { tag: 'M2', kind: 'digital-tram' as const },
];
const TAPE = { tag: 'B1', kind: 'tape' as const };
const SIDES: [Side, Side] = ['L', 'R'];
const TOLERANCE = 3;
const START = 1_700_000_000_000;

/** A shop whose hands differ as ordinary hands do, and in their habits. Every job is measured by one of them in turn. */
export function habitShop(options: HabitShopOptions): HabitShop {
  const random = new Random(options.seed);
  const hands = Object.entries(options.hands).map(([code, habits]) => handOf(code, habits, random));
  const gauges = new Map(
    [...GAUGES, STRUT, ...TRAMS, TAPE].map(({ tag }) => [tag, random.normal(0, 0.25)] as const),
  );
  const sheets = Array.from({ length: 10 }, () => sheetOf(random));
  const book = new Book(random, gauges);
  for (let j = 0; j < options.jobs; j++) {
    const hand = hands[j % hands.length];
    if (hand === undefined) throw new RangeError('A shop needs a hand.');
    book.job(`J${String(j + 1).padStart(5, '0')}`, START + j * 86_400_000, hand, random.pick(sheets));
  }
  return { readings: book.readings, jobs: collapse(book.readings), verdicts: book.verdicts };
}

/** Every order equally likely, so that no gauge hangs at one place of the round more often than another. */
function shuffled<T>(items: readonly T[], random: Random): T[] {
  const order = items.map((item) => ({ item, at: random.uniform() }));
  return order.sort((a, b) => a.at - b.at).map(({ item }) => item);
}

/** The sums of a simulated shop by technician. */
export const habitTallies = (shop: HabitShop, verdicts = shop.verdicts): Map<string, HabitTally> =>
  tallyShop(shop.jobs, verdicts, firstReadings(shop.readings));

function handOf(code: string, habits: HandHabits, random: Random): Hand {
  return {
    forgetsClearance: 0.002 * Math.exp(random.normal(0, 0.4)),
    otherMark: 0.003 * Math.exp(random.normal(0, 0.4)),
    carelessZero: 0.04 * Math.exp(random.normal(0, 0.4)),
    leftLow: random.normal(0, 0.1),
    drift: random.normal(0, 0.05),
    halves: 0,
    drawn: 0,
    copied: 0,
    rehangs: Math.min(0.9, Math.max(0.1, random.normal(0.5, 0.06))),
    heightsFirst: 0.04,
    unequalPointers: random.uniform(0, 10),
    pointerWidth: random.normal(0, 0.1),
    reading: 0.5 * Math.exp(random.normal(0, 0.25)),
    ...habits,
    code,
    setting: 0.75 * Math.exp(random.normal(0, 0.25)),
    bias: random.normal(0, 0.3),
    missetRate: 0.05 * Math.exp(random.normal(0, 0.4)),
    withGauge: habits.withGauge ?? null,
  };
}

function sheetOf(random: Random): { name: string; stations: Station[] } {
  const places: [number, Section, boolean][] = [
    [0, 'front', false],
    [random.uniform(350, 600), 'front', false],
    [random.uniform(1000, 1200), 'center', true],
    [random.uniform(2500, 2700), 'center', true],
    [random.uniform(3100, 3300), 'rear', false],
    [random.uniform(3600, 3900), 'rear', false],
  ];
  return {
    name: `S${Math.round(random.uniform(0, 1e9))}`,
    stations: places.map(([x, section, zero], i) => ({
      x: Math.round(x),
      section,
      zero,
      nominal: Math.round(random.uniform(120, 480)),
      letters: [String.fromCharCode(65 + 2 * i), String.fromCharCode(66 + 2 * i)],
    })),
  };
}

class Book {
  readonly readings: Reading[] = [];
  readonly verdicts: RoundVerdict[] = [];
  #clock = 0;
  #label = 0;
  constructor(
    private readonly random: Random,
    private readonly gauges: ReadonlyMap<string, number>,
  ) {}

  job(job: string, at: number, hand: Hand, sheet: { name: string; stations: Station[] }): void {
    const { random } = this;
    const clearance = random.pick([0, 80, 100, 100, 120]);
    const front = random.chance(0.5);
    const damage = sheet.stations.map((station) =>
      SIDES.map(() =>
        !station.zero && (station.section === 'front') === front && random.chance(0.4)
          ? random.uniform(4, 15) * (random.chance(0.5) ? 1 : -1)
          : 0,
      ),
    );
    const repaired = sheet.stations.map(() => SIDES.map(() => random.normal(0, 0.8)));
    this.#label = 0;
    for (const stage of ['before', 'after'] as const) {
      this.#clock = at + (stage === 'before' ? 0 : 36_000_000);
      const round = {
        head: { job, sheet: sheet.name, stage, attempt: 1, clearance },
        hand,
        stations: sheet.stations,
        body: stage === 'before' ? damage : repaired,
      };
      if (random.chance(hand.heightsFirst)) {
        this.#heights(round);
        this.#lengths(round);
      } else {
        this.#lengths(round);
        this.#heights(round);
      }
    }
  }

  #lengths({ head, hand, stations, body }: RoundPlan): void {
    const { random } = this;
    const tram = random.pick(TRAMS);
    const ordered = [2, 0, 1, 3, 4].map((i) => [i, i + 1] as const);
    for (const [i, j] of ordered) {
      const [a, b] = [stations[i], stations[j]];
      if (a === undefined || b === undefined) continue;
      for (const [from, to] of [[0, 0] as const, [1, 1] as const, [0, 1] as const]) {
        const nominal = Math.round(Math.hypot(b.x - a.x, from === to ? 60 : 900));
        const hit = Math.abs(body[i]?.[from] ?? 0) > 3 || Math.abs(body[j]?.[to] ?? 0) > 3;
        const change = hit && random.chance(0.7) ? random.uniform(2, 10) * (random.chance(0.5) ? 1 : -1) : 0;
        const gauge = random.chance(0.06) ? TAPE : tram;
        const scatter = random.normal(0, 0.6 * hand.setting);
        const pointers = Math.sqrt(nominal ** 2 - hand.unequalPointers ** 2) - nominal + hand.pointerWidth;
        this.#read(hand, gauge, head, this.#open(head.stage), [
          {
            quantity: 'length',
            point: `${a.letters[from]}-${b.letters[to]}`,
            side: null,
            section: a.zero && b.zero ? 'center' : a.zero ? b.section : a.section,
            station: null,
            zero: false,
            nominal,
            shown: change + scatter + pointers + (this.gauges.get(gauge.tag) ?? 0),
          },
        ]);
      }
    }
  }

  #heights(plan: RoundPlan): void {
    const { random } = this;
    const { head, hand, stations, body } = plan;
    const gauges = shuffled(GAUGES, random);
    const zeros = stations.flatMap((station, i) => (station.zero ? [i] : []));
    const [a, b] = zeros;
    const [za, zb] = [stations[a ?? 0], stations[b ?? 0]];
    if (a === undefined || b === undefined || za === undefined || zb === undefined) return;
    const heights: HeightVerdict[] = [];
    const datum: number[][] = [];
    for (const i of zeros) {
      const careless = random.chance(hand.carelessZero);
      const gross = careless ? random.uniform(4, 12) * (random.chance(0.5) ? 1 : -1) : 0;
      const { settings, signature } = this.#set(plan, i, gross);
      datum.push(settings.map((setting, s) => setting + (body[i]?.[s] ?? 0)));
      heights.push(...this.#hang(plan, i, gauges[zeros.indexOf(i)] ?? STRUT, settings, [0, 0], signature));
    }
    let order = 0;
    const hang = (i: number): boolean => {
      const station = stations[i];
      if (station === undefined) return false;
      const gross =
        random.chance(hand.missetRate) && random.chance(0.6)
          ? random.uniform(4, 12) * (random.chance(0.5) ? 1 : -1)
          : 0;
      const { settings, signature } = this.#set(plan, i, gross);
      const gauge = i === 0 && random.chance(0.5) ? STRUT : (gauges[2 + (i % 3)] ?? STRUT);
      const weight = (zb.x - station.x) / (zb.x - za.x);
      const more =
        hand.bias +
        (this.gauges.get(gauge.tag) ?? 0) +
        hand.drift * order +
        (hand.withGauge?.gauge === gauge.tag ? hand.withGauge.more : 0);
      order++;
      const shown = settings.map(
        (setting, s) =>
          setting -
          (s === 0 ? hand.leftLow : 0) +
          (body[i]?.[s] ?? 0) -
          weight * (datum[0]?.[s] ?? 0) -
          (1 - weight) * (datum[1]?.[s] ?? 0) +
          more,
      );
      const seen = this.#hang(plan, i, gauge, settings, shown, signature);
      heights.push(...seen);
      return seen.some(({ deviation }) => Math.abs(deviation) > TOLERANCE);
    };
    const others = stations.flatMap((station, i) => (station.zero ? [] : [i]));
    const out = others.filter(hang);
    for (const i of others) if (random.chance(out.includes(i) ? hand.rehangs : 0.04)) hang(i);
    this.verdicts.push({
      job: head.job,
      stage: head.stage,
      attempt: 1,
      decidable: true,
      why: null,
      pZeroMisset: 0,
      datum: [],
      heights,
      centerline: [],
      leftOut: 0,
      nextChecks: [],
    });
  }

  /** Settings of both hangers, and the slip that was made. */
  #set({ hand, head, stations }: RoundPlan, i: number, gross: number) {
    const { random } = this;
    const common = random.normal(0, hand.setting * Math.SQRT1_2);
    const own = (): number => common + random.normal(0, hand.setting * Math.SQRT1_2) + gross;
    let slip = 0;
    let signature: string | null = null;
    if (head.clearance > 0 && stations[i]?.zero === false && random.chance(hand.forgetsClearance)) {
      slip = -head.clearance;
      signature = 'clearance left out';
    } else if (random.chance(hand.otherMark)) {
      slip = 20;
      signature = 'another fixed mark';
    }
    return { settings: [own() + slip, own() + slip], signature };
  }

  #hang(
    { head, hand, stations, body }: RoundPlan,
    i: number,
    gauge: { tag: string; kind: GaugeKind },
    settings: number[],
    shown: number[],
    signature: string | null,
  ): HeightVerdict[] {
    const station = stations[i];
    if (station === undefined) return [];
    const setup = this.#open(head.stage);
    const means = this.#read(
      hand,
      gauge,
      head,
      setup,
      SIDES.map((side, s) => ({
        quantity: 'height' as const,
        point: station.letters[s] ?? '',
        side,
        section: station.section,
        station: station.x,
        zero: station.zero,
        nominal: station.nominal,
        shown: shown[s] ?? 0,
      })),
    );
    return SIDES.map((side, s) => {
      const gaugeCounts = Math.abs(settings[s] ?? 0) > TOLERANCE;
      const bodyCounts = Math.abs(body[i]?.[s] ?? 0) > TOLERANCE;
      const cause = gaugeCounts ? (bodyCounts ? 'both' : 'gauge') : bodyCounts ? 'body' : 'neither';
      return {
        setup,
        gauge: gauge.tag,
        technician: hand.code,
        point: station.letters[s] ?? '',
        side,
        station: station.x,
        zero: station.zero,
        deviation: means[s] ?? 0,
        p: { neither: 0, gauge: 0, body: 0, both: 0, [cause]: 1 },
        misset: settings[s] ?? 0,
        body: body[i]?.[s] ?? 0,
        signature,
      };
    });
  }

  #open(stage: string): string {
    this.#label++;
    this.#clock += 60_000;
    return `${stage === 'before' ? 'B' : 'A'}1-${String(this.#label).padStart(2, '0')}`;
  }

  /** Reads every dimension of a setup one to three times; the mean deviations as written down. */
  #read(
    hand: Hand,
    gauge: { tag: string; kind: GaugeKind },
    head: RoundPlan['head'],
    setup: string,
    dimensions: readonly (Pick<
      Reading,
      'quantity' | 'point' | 'side' | 'section' | 'station' | 'zero' | 'nominal'
    > & { shown: number })[],
  ): number[] {
    const { random } = this;
    const repeats = 1 + random.weighted([0.5, 0.3, 0.2]);
    const [fine, coarse] = STEP[gauge.kind];
    const scatter = hand.reading * (gauge.kind === 'tape' ? 3 : 1);
    return dimensions.map((dimension) => {
      const clearance = dimension.quantity === 'height' ? head.clearance : 0;
      const origin = dimension.nominal + clearance;
      let sum = 0;
      let last: number | null = null;
      for (let repeat = 1; repeat <= repeats; repeat++) {
        const step = random.chance(hand.halves) ? coarse : fine;
        let value = Math.round((origin + dimension.shown + random.normal(0, scatter)) / step) * step;
        if (Math.abs(value - origin) <= 1 && random.chance(hand.drawn)) value = origin;
        if (last !== null && random.chance(hand.copied)) value = last;
        value = Number(value.toFixed(1));
        last = value;
        sum += value - origin;
        this.#clock += 20_000;
        // Written out in full: spreading the dimension takes ten times as long.
        this.readings.push({
          quantity: dimension.quantity,
          point: dimension.point,
          side: dimension.side,
          section: dimension.section,
          station: dimension.station,
          zero: dimension.zero,
          nominal: dimension.nominal,
          tolerance: TOLERANCE,
          line: this.readings.length + 2,
          job: head.job,
          sheet: head.sheet,
          stage: head.stage,
          attempt: head.attempt,
          takenAt: this.#clock,
          technician: hand.code,
          gauge: gauge.tag,
          gaugeKind: gauge.kind,
          setup,
          clearance: head.clearance,
          repeat,
          value,
          cause: null,
        });
      }
      return sum / repeats;
    });
  }
}

interface RoundPlan {
  head: { job: string; sheet: string; stage: 'before' | 'after'; attempt: number; clearance: number };
  hand: Hand;
  stations: Station[];
  body: number[][];
}

import { type Beam, zeroPicks } from './beam';
import { componentAt, patternProbability } from './explanation';
import { foresee, stateAhead, takeFirst } from './foresee';
import { LetGo } from './let-go';
import { PATTERNS } from './learned';
import { damages, type RoundModel } from './model';
import { openErrors } from './opening-state';
import { frontAndRear, logPriorOf, type Openings, openings } from './openings';
import { type Coming, MOST, mostOf, type Outlook } from './outlook';

/** Fills a beam with all openings of a round. */
export function openBeam(model: RoundModel, beam: Beam): void {
  const found = openings(model);
  const opened = new OpenedGroups(model, found);
  beam.begin(model, found.count);
  for (let index = 0; index < found.count; index++) {
    put(model, found, opened, index, beam, index, opened.logWeight(index));
    beam.outlook[index] = 0;
  }
}

/** ln weights of the openings, used again for every round; and of the setups after the first, as foreseen. */
let logWeight = new Float64Array(512);
let after = new Float64Array(512);
const letGo = new LetGo();

/**
 * Fills a beam with those openings that the setups are not foreseen to leave behind the best by more than `reach`, as
 * `lookAhead` lets go of explanations at later setups: most are never written out.
 * @returns the share, as foreseen, of the kinds that are let go.
 */
export function openAhead(model: RoundModel, outlook: Outlook, beam: Beam, reach: number): number {
  const coming = outlook[0] ?? [];
  const found = openings(model);
  const { count, slots, picks, kind } = found;
  if (logWeight.length < count) {
    logWeight = new Float64Array(2 * count);
    after = new Float64Array(2 * count);
  }
  const opened = new OpenedGroups(model, found);
  const most = mostOf(coming);
  const n = 2 * model.zeros.length;
  const { mean, covariance } = stateAhead(n + 2);
  const state = { mean, covariance, n, m: 0, C: 0 };
  const [first] = coming;
  if (!first) throw new RangeError('To look ahead there must be a setup to come.');
  letGo.begin(count, reach);
  for (let index = 0; index < count; index++) {
    const own = opened.logWeight(index);
    logWeight[index] = own;
    if (!letGo.isWorth(own + most)) {
      letGo.score(index, own + most);
      continue;
    }
    const row = index * slots;
    const enough = letGo.floor - own;
    const value = valueOfFirst(model, first, picks, row);
    const bound = most + (value - (first.numbers[MOST] ?? 0));
    if (bound < enough) {
      letGo.score(index, own + bound);
      continue;
    }
    openErrors(model, picks, row, state);
    const ahead = foresee(coming, n, 0, most, enough, value);
    letGo.score(index, own + ahead.all);
    after[index] = ahead.after;
  }
  const { order, dropped } = letGo.end(kind, logWeight);
  beam.begin(model, order.length);
  for (let k = 0; k < order.length; k++) {
    const index = order[k] ?? 0;
    put(model, found, opened, index, beam, k, logWeight[index] ?? -Infinity);
    beam.outlook[k] = after[index] ?? 0;
  }
  return dropped;
}

/** What the first setup counts for by the opening whose picks begin at `row`, ln. */
function valueOfFirst({ bodies, zeros }: RoundModel, first: Coming, picks: Int16Array, row: number): number {
  const front = zeros[first.zeroA / 2];
  const rear = zeros[first.zeroB / 2];
  if (!front || !rear) throw new RangeError('A setup is read against two zero setups.');
  return takeFirst(
    first,
    componentAt(bodies, picks[row + front.station] ?? 0),
    componentAt(front.settings, picks[row + 2 + first.zeroA / 2] ?? 0),
    componentAt(bodies, picks[row + rear.station] ?? 0),
    componentAt(rear.settings, picks[row + 2 + first.zeroB / 2] ?? 0),
  );
}

/** Writes an opening into place `k` of a beam. */
function put(
  model: RoundModel,
  { slots, picks, kind, patterns }: Openings,
  opened: OpenedGroups,
  index: number,
  beam: Beam,
  k: number,
  own: number,
): void {
  const { size, pickCount, mean, covariance } = beam;
  const row = index * slots;
  const pick = k * pickCount;
  beam.picks.fill(0, pick, pick + pickCount);
  beam.picks[pick] = picks[row] ?? 0;
  beam.picks[pick + 1] = picks[row + 1] ?? 0;
  const zeroAt = pick + zeroPicks(model);
  for (let z = 0; z < model.zeros.length; z++) beam.picks[zeroAt + z] = picks[row + 2 + z] ?? 0;
  openErrors(model, picks, row, { mean, covariance, n: size, m: k * size, C: k * size * size });
  beam.kind[k] = kind[index] ?? 0;
  beam.logWeight[k] = own;
  beam.group[k] = opened.group(patterns[index] ?? 0, beam, k);
}

/** What openings gain, and their groups, by the patterns of damage at the two zero stations. */
class OpenedGroups {
  readonly #model: RoundModel;
  readonly #openings: Openings;
  readonly #gains = new Float64Array(PATTERNS.length ** 2).fill(Number.NaN);
  readonly #groups = new Int32Array(PATTERNS.length ** 2).fill(-1);

  constructor(model: RoundModel, found: Openings) {
    this.#model = model;
    this.#openings = found;
  }

  /** ln weight of an opening: its prior, its patterns' probability, and the lengths whose ends are all settled. */
  logWeight(index: number): number {
    const patterns = this.#openings.patterns[index] ?? 0;
    let gain = this.#gains[patterns] ?? 0;
    if (Number.isNaN(gain)) gain = this.#gains[patterns] = this.#gain(patterns);
    return logPriorOf(this.#model, this.#openings, index) + gain;
  }

  /** The group of those with these patterns in a beam, led by `k` where it is the first. */
  group(patterns: number, beam: Beam, k: number): number {
    const known = this.#groups[patterns] ?? -1;
    if (known >= 0) return known;
    const group = beam.beginGroup(k);
    this.#groups[patterns] = group;
    const { impacts, impactCount } = beam;
    const total = this.#probability(patterns);
    for (let c = 0; c < impactCount; c++) impacts[group * impactCount + c] = this.#joint(patterns, c) / total;
    return group;
  }

  #gain(patterns: number): number {
    let sum = Math.log(this.#probability(patterns));
    const [front, rear] = frontAndRear(patterns);
    for (const { last, ends, damaged, sound } of this.#model.lengths) {
      if (last > 1) continue;
      sum += ends.some(([station, side]) => damages(station === 0 ? front : rear, side)) ? damaged : sound;
    }
    return sum;
  }

  #probability(patterns: number): number {
    let total = 0;
    for (let c = 0; c < this.#model.shares.length; c++) total += this.#joint(patterns, c);
    return total;
  }

  /** Probability of an impact with both patterns. */
  #joint(patterns: number, impact: number): number {
    const [front, rear] = frontAndRear(patterns);
    return (
      (this.#model.shares[impact] ?? 0) *
      patternProbability(this.#model, impact, 0, front) *
      patternProbability(this.#model, impact, 1, rear)
    );
  }
}

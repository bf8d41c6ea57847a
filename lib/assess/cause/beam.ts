import type { RoundModel } from './model';

/**
 * The explanations of one step of the search side by side in flat arrays. Of the state only what later readings
 * depend on is kept: the datum error of every zero setup (left, right), then the body at the station under way.
 * Given these, earlier stations have nothing more to say of later ones. What depends on the patterns of damage alone
 * (the impact, the lengths) is the same for all explanations that have the same ones: they make a group.
 */
export class Beam {
  count = 0;
  /** Length of a state: two a zero setup, two for the station under way. */
  size = 0;
  impactCount = 0;
  /** Picks: body by station, then setting by zero setup, then setting by step. */
  pickCount = 0;
  logWeight = new Float64Array(0);
  /** ln of what is foreseen of the setups after the one that is next. */
  outlook = new Float64Array(0);
  /** Number of the kind (`nextKind`). */
  kind = new Int32Array(0);
  mean = new Float64Array(0);
  covariance = new Float64Array(0);
  picks = new Int16Array(0);
  /** Group of each explanation. */
  group = new Int32Array(0);
  groupCount = 0;
  /** By group: P(impact class | patterns so far), and the first of its explanations. */
  impacts = new Float64Array(0);
  leader = new Int32Array(0);
  #room = 0;

  /** Empties it and makes room for `count` explanations of a round. */
  begin(model: RoundModel, count: number): void {
    const size = 2 * model.zeros.length + 2;
    const impacts = model.shares.length;
    const picks = model.frame.stations.length + model.zeros.length + model.steps.length;
    const fits =
      count <= this.#room &&
      size * size * count <= this.covariance.length &&
      size * count <= this.mean.length &&
      impacts * count <= this.impacts.length &&
      picks * count <= this.picks.length;
    if (!fits) {
      this.#room = Math.max(count, this.#room);
      const room = this.#room;
      this.logWeight = new Float64Array(room);
      this.outlook = new Float64Array(room);
      this.kind = new Int32Array(room);
      this.group = new Int32Array(room);
      this.leader = new Int32Array(room);
      this.mean = new Float64Array(Math.max(size * room, this.mean.length));
      this.covariance = new Float64Array(Math.max(size * size * room, this.covariance.length));
      this.impacts = new Float64Array(Math.max(impacts * room, this.impacts.length));
      this.picks = new Int16Array(Math.max(picks * room, this.picks.length));
    }
    this.count = count;
    this.groupCount = 0;
    this.size = size;
    this.impactCount = impacts;
    this.pickCount = picks;
  }

  /** Takes over what is in another beam of the same round. */
  copy(model: RoundModel, from: Beam): void {
    this.begin(model, from.count);
    const { count, size, impactCount, pickCount } = this;
    this.groupCount = from.groupCount;
    this.logWeight.set(from.logWeight.subarray(0, count));
    this.outlook.set(from.outlook.subarray(0, count));
    this.kind.set(from.kind.subarray(0, count));
    this.mean.set(from.mean.subarray(0, size * count));
    this.covariance.set(from.covariance.subarray(0, size * size * count));
    this.picks.set(from.picks.subarray(0, pickCount * count));
    this.group.set(from.group.subarray(0, count));
    this.leader.set(from.leader.subarray(0, count));
    this.impacts.set(from.impacts.subarray(0, impactCount * from.groupCount));
  }

  /** Lets go of all but these. @param order their places, going up. */
  retain(order: readonly number[]): void {
    const { size, pickCount } = this;
    const square = size * size;
    this.leader.fill(-1, 0, this.groupCount);
    for (let k = 0; k < order.length; k++) {
      const index = order[k] ?? 0;
      const group = this.group[index] ?? 0;
      if ((this.leader[group] ?? -1) < 0) this.leader[group] = k;
      if (index === k) continue;
      this.logWeight[k] = this.logWeight[index] ?? -Infinity;
      this.outlook[k] = this.outlook[index] ?? 0;
      this.kind[k] = this.kind[index] ?? 0;
      this.group[k] = group;
      this.mean.copyWithin(k * size, index * size, (index + 1) * size);
      this.covariance.copyWithin(k * square, index * square, (index + 1) * square);
      this.picks.copyWithin(k * pickCount, index * pickCount, (index + 1) * pickCount);
    }
    // A group of which nobody is left is asked for nothing, but looked at like the others.
    for (let group = 0; group < this.groupCount; group++)
      if ((this.leader[group] ?? -1) < 0) this.leader[group] = 0;
    this.count = order.length;
  }

  /** A new group, led by an explanation. */
  beginGroup(leader: number): number {
    this.leader[this.groupCount] = leader;
    return this.groupCount++;
  }
}

/** Where the zero setups' settings stand among the picks of an explanation. */
export const zeroPicks = (model: RoundModel): number => model.frame.stations.length;

/** Where the steps' settings stand among the picks of an explanation. */
export const stepPicks = (model: RoundModel): number => model.frame.stations.length + model.zeros.length;

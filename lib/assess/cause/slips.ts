import type { HeightPair, RoundFrame } from './frame';
import type { Misset } from './learned';

/** A slip moves one or both hangers by a size known in advance, mm. */
export interface Slip {
  misset: Misset;
  left: number;
  right: number;
}

/** The slips of setups that were met before: a shop hangs its gauges at the same points of the same sheets. */
const known = new Map<string, Met[]>();
const MANY = 1024;

/** Setups with these sheet values, and the stations of a sheet where the first reading is their own. */
interface Met {
  left: number;
  right: number;
  own: string;
  slips: readonly Slip[];
}

/** `slipsOf`, the same list wherever the setups of a round have the same sheet values. */
export function knownSlips(frame: RoundFrame): (pair: HeightPair) => readonly Slip[] {
  let sheet = `${frame.clearance}`;
  for (const { pairs } of frame.stations) {
    const [row] = pairs;
    if (row) for (const nominal of nominals(row)) sheet += ` ${nominal}`;
    else sheet += ';';
  }
  let met = known.get(sheet);
  if (!met) {
    if (known.size >= MANY) known.clear();
    known.set(sheet, (met = []));
  }
  const here = met;
  return (pair) => {
    const [left, right] = nominals(pair);
    let own = '';
    frame.stations.forEach(({ pairs: [row] }, at) => {
      if (row?.setup === pair.setup) own += ` ${at}`;
    });
    let found = here.find(
      (one) => Object.is(one.left, left) && Object.is(one.right, right) && one.own === own,
    );
    if (!found) here.push((found = { left, right, own, slips: slipsOf(pair, frame) }));
    return found.slips;
  };
}

/** The recognisable slips of this setup, each with its size known in advance. */
export function slipsOf(pair: HeightPair, frame: RoundFrame): Slip[] {
  const slips: Slip[] = [];
  const add = (misset: Misset, left: number, right: number): void => {
    if (Math.max(Math.abs(left), Math.abs(right)) < 2) return;
    if (slips.some((s) => s.misset === misset && s.left === left && s.right === right)) return;
    slips.push({ misset, left, right });
  };
  const { clearance } = frame;
  if (clearance > 0) {
    add('clearance-omitted', -clearance, -clearance);
    add('clearance-twice', clearance, clearance);
  }
  const [nominalLeft, nominalRight] = nominals(pair);
  if (Number.isFinite(nominalLeft)) {
    for (const station of frame.stations) {
      const row = station.pairs[0];
      if (!row || row.setup === pair.setup) continue;
      const [otherLeft, otherRight] = nominals(row);
      add('other-row', otherLeft - nominalLeft, otherRight - nominalRight);
    }
    add('sides-exchanged', nominalRight - nominalLeft, nominalLeft - nominalRight);
    // The sheet misread moves both hangers, the tape misread one.
    if (nominalLeft === nominalRight)
      for (const size of exchanges(nominalLeft)) add('digits-exchanged', size, size);
    for (const size of exchanges(nominalLeft + clearance)) add('digits-exchanged', size, 0);
    for (const size of exchanges(nominalRight + clearance)) add('digits-exchanged', 0, size);
  }
  for (const [misset, size] of [
    ['tape-10', 10],
    ['tape-100', 100],
  ] as const) {
    for (const sign of [-1, 1]) {
      add(misset, sign * size, 0);
      add(misset, 0, sign * size);
    }
  }
  return slips;
}

/** A side that was not read has the other side's sheet value. */
function nominals(pair: HeightPair): [number, number] {
  const [left, right] = pair.nominal;
  return [Number.isFinite(left) ? left : right, Number.isFinite(right) ? right : left];
}

/** Differences that arise when two neighbouring digits of a whole-millimetre height are exchanged. */
function exchanges(height: number): number[] {
  const digits = Math.round(Math.abs(height)).toString();
  const sizes: number[] = [];
  for (let i = 0; i + 1 < digits.length; i++) {
    const first = digits[i];
    const second = digits[i + 1];
    if (first === undefined || second === undefined || first === second || (i === 0 && second === '0'))
      continue;
    const read = digits.slice(0, i) + second + first + digits.slice(i + 2);
    sizes.push(Number(read) - Number(digits));
  }
  return sizes;
}

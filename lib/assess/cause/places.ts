import type { Component } from './components';
import {
  addTail,
  LOG_PRIOR,
  LOG_TAIL,
  type NormalColumns,
  normalNumbers,
  type SettingColumns,
  WIDTH,
} from './columns';

/** Where a station's body may be, in columns: those of one pattern and width together, the likeliest of them first. */
export interface Places extends NormalColumns {
  /** Index into the bodies; −1 for a later setup, whose body is known. */
  body: Int16Array;
  /** Pattern of damage, by place. */
  sides: Uint8Array;
  groups: PlaceGroup[];
}

interface PlaceGroup {
  sides: number;
  width: Component['width'];
  from: number;
  to: number;
}

/** The places of one group with the settings they are met with: rows `rowFrom` to `rowTo` of the pair's columns. */
export interface Meeting {
  sides: number;
  from: number;
  to: number;
  rowFrom: number;
  rowTo: number;
  /** ln prior of the likeliest of these settings, and of all of them together. */
  lead: number;
  mass: number;
}

/** A later setup adds nothing to the body that its station's first setup put into the state. */
export const KNOWN_PLACE: Places = placesFrom([
  {
    sides: 0,
    width: 'fine',
    members: [{ body: -1, left: 0, right: 0, varLeft: 0, varRight: 0, covariance: 0, logPrior: 0 }],
  },
]);

type Member = { body: number } & Pick<
  Component,
  'left' | 'right' | 'varLeft' | 'varRight' | 'covariance' | 'logPrior'
>;

/** The bodies that one reading can meet; broad ones stand for pairs of rare events at the zero stations only. */
export function placesOf(bodies: readonly Component[]): Places {
  const groups: Group[] = [];
  for (let body = 0; body < bodies.length; body++) {
    const place = bodies[body];
    if (!place || place.width === 'broad') continue;
    const { sides, width, left, right, varLeft, varRight, covariance, logPrior } = place;
    let group = groups.find((one) => one.sides === sides && one.width === width);
    if (!group) groups.push((group = { sides, width, members: [] }));
    group.members.push({ body, left, right, varLeft, varRight, covariance, logPrior });
  }
  for (const { members } of groups) members.sort((a, b) => b.logPrior - a.logPrior);
  return placesFrom(groups);
}

interface Group {
  sides: number;
  width: Component['width'];
  members: Member[];
}

function placesFrom(groups: readonly Group[]): Places {
  const members = groups.flatMap((group) => group.members);
  const places: Places = {
    numbers: normalNumbers(members),
    body: Int16Array.from(members, ({ body }) => body),
    sides: Uint8Array.from(groups.flatMap(({ sides, members: own }) => own.map(() => sides))),
    groups: [],
  };
  let from = 0;
  for (const { sides, width, members: own } of groups) {
    const to = from + own.length;
    addTail(places, from, to);
    places.groups.push({ sides, width, from, to });
    from = to;
  }
  return places;
}

/**
 * What the first setup at a station can meet: any body with an ordinary setting, a sound body with any setting,
 * and damage with any setting: in one wide band where this is the only setup (one reading cannot tell how two
 * unknown sizes share it), in all bands where others will tell, so that their order does not matter.
 */
export function meetings(places: Places, columns: SettingColumns, only: boolean): Meeting[] {
  const { count, numbers } = columns;
  return places.groups.flatMap(({ sides, width, from, to }): Meeting[] => {
    if (width === 'wide' && !only) return [];
    const rowFrom = width === 'wide' ? 1 : 0;
    const rowTo = sides !== 0 && width === 'fine' && only ? 1 : count;
    if (rowFrom >= rowTo) return [];
    const lead = numbers[WIDTH * rowFrom + LOG_PRIOR] ?? -Infinity;
    const mass = rowTo === 1 ? lead : (numbers[WIDTH * rowFrom + LOG_TAIL] ?? -Infinity);
    return [{ sides, from, to, rowFrom, rowTo, lead, mass }];
  });
}

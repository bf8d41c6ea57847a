import type { Component } from '../cause/components';
import { componentAt, type Explanation } from '../cause/explanation';
import type { HeightPair } from '../cause/frame';
import type { Misset } from '../cause/learned';
import type { RoundModel } from '../cause/model';
import { pairSetting, zeroSetting } from '../cause/moments';
import type { SidesConcerned } from './types';

/** A fault under one explanation, its place in the model kept for grouping. */
export interface ExplainedFault {
  /** Same for the same thing wrong, in the same direction, whatever its size. */
  key: string;
  what: 'gauge' | 'body';
  zero: boolean;
  station: number;
  pair: HeightPair;
  sides: SidesConcerned;
  left: number;
  right: number;
  misset: Misset | null;
}

/** Everything that an explanation takes to be wrong, sizes as expected given all readings. */
export function faultsOf(model: RoundModel, item: Explanation): ExplainedFault[] {
  return [...zeroGauges(model, item), ...gauges(model, item), ...bodies(model, item)];
}

function zeroGauges(model: RoundModel, item: Explanation): ExplainedFault[] {
  return model.zeros.flatMap((zero, k) => {
    const setting = componentAt(zero.settings, item.zeroSettings[k] ?? 0);
    const { left, right } = zeroSetting(item, zero);
    return gaugeFault(model, `z${k}`, setting, zero.station, zero.pair, left, right);
  });
}

function gauges(model: RoundModel, item: Explanation): ExplainedFault[] {
  return model.steps.flatMap((pair, step) => {
    const setting = componentAt(pair.settings, item.settings[step] ?? 0);
    const { left, right } = pairSetting(item, pair, setting);
    return gaugeFault(model, `g${step}`, setting, pair.station, pair.pair, left, right);
  });
}

function gaugeFault(
  model: RoundModel,
  place: string,
  setting: Component,
  station: number,
  pair: HeightPair,
  left: number,
  right: number,
): ExplainedFault[] {
  if (setting.misset === 'ordinary') return [];
  const sides = hangersOff(setting);
  return [
    {
      ...sized(place, sides, left, right),
      what: 'gauge',
      zero: model.frame.stations[station]?.zero ?? false,
      station,
      pair,
      misset: setting.misset,
    },
  ];
}

function hangersOff({ misset, left, right }: Component): SidesConcerned {
  if (misset === 'left' || misset === 'right' || misset === 'both') return misset;
  return left === 0 ? 'right' : right === 0 ? 'left' : 'both';
}

function bodies(model: RoundModel, item: Explanation): ExplainedFault[] {
  return model.frame.stations.flatMap((station, g): ExplainedFault[] => {
    const pattern = componentAt(model.bodies, item.bodies[g] ?? 0).pattern;
    const pair = station.pairs[0];
    if (pattern === 'none' || pair === undefined) return [];
    const at = bodyAt(model, g);
    return [
      {
        // Which way each side went is in its sign.
        ...sized(
          `b${g}`,
          pattern === 'opposed' ? 'both' : pattern,
          item.mean[at] ?? 0,
          item.mean[at + 1] ?? 0,
        ),
        what: 'body',
        zero: station.zero,
        station: g,
        pair,
        misset: null,
      },
    ];
  });
}

/** Where the body of a station stands in the state, left; right is one more. */
export function bodyAt(model: RoundModel, station: number): number {
  if (station < 2) return 2 * station;
  return model.steps.find((pair) => pair.station === station)?.body ?? 0;
}

/** Whether an explanation has the body of a station damaged on a side. */
export function damagedAt(model: RoundModel, item: Explanation, station: number, side: 0 | 1): boolean {
  const { pattern } = componentAt(model.bodies, item.bodies[station] ?? 0);
  return pattern === 'both' || pattern === 'opposed' || pattern === (side === 0 ? 'left' : 'right');
}

function sized(
  place: string,
  sides: SidesConcerned,
  left: number,
  right: number,
): Pick<ExplainedFault, 'key' | 'sides' | 'left' | 'right'> {
  const sign = (value: number): string => (value < 0 ? '-' : '+');
  const own = [sides === 'right' ? '' : sign(left), sides === 'left' ? '' : sign(right)];
  return {
    key: `${place} ${sides} ${own.join('')}`,
    sides,
    left: sides === 'right' ? 0 : left,
    right: sides === 'left' ? 0 : right,
  };
}

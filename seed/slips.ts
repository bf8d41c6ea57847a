import type { Side } from '@/lib/measure';

/** What can go wrong in setting a gauge. The hangers' faults have any size; the others a size known in advance. */
export const SETTING_FAULTS = [
  'both hangers',
  'left hanger',
  'right hanger',
  'clearance left out',
  'clearance twice',
  'another row',
  'another mark',
  'tape',
  'sides exchanged',
  'digits exchanged',
] as const;
export type SettingFault = (typeof SETTING_FAULTS)[number];

/** Everything that the size of a slip depends on. */
export interface SlipPlace {
  nominal: Record<Side, number>;
  clearance: number;
  /** Of the stations just before and after on the sheet. */
  neighbours: readonly Record<Side, number>[];
  /** Length from the pointer's tip to the fixed mark of this gauge. */
  fixedMark: number;
}

/** A slip as set on each side, mm; a side at 0 is set right. */
export type SlipSize = Record<Side, number>;

const even = (size: number): SlipSize => ({ L: size, R: size });
const oneSided = (size: number): SlipSize[] => [
  { L: size, R: 0 },
  { L: 0, R: size },
];

/** Every size that a recognisable slip can have here; empty where it cannot happen (no clearance, equal sides). */
export function slipSizes(fault: SettingFault, place: SlipPlace): SlipSize[] {
  const { nominal, clearance, neighbours, fixedMark } = place;
  switch (fault) {
    case 'clearance left out':
      return clearance === 0 ? [] : [even(-clearance)];
    case 'clearance twice':
      return clearance === 0 ? [] : [even(clearance)];
    case 'another row':
      return neighbours.map((row) => ({ L: row.L - nominal.L, R: row.R - nominal.R }));
    case 'another mark':
      return [even(fixedMark), even(-fixedMark)];
    case 'tape':
      // Ten millimetres are misread far more often than a hundred.
      return [10, -10, 10, -10, 10, -10, 100].flatMap(oneSided);
    case 'sides exchanged':
      return [{ L: nominal.R - nominal.L, R: nominal.L - nominal.R }];
    case 'digits exchanged':
      return [
        { L: lastDigitsExchanged(nominal.L + clearance), R: 0 },
        { L: 0, R: lastDigitsExchanged(nominal.R + clearance) },
      ];
    case 'both hangers':
    case 'left hanger':
    case 'right hanger':
      return [];
  }
}

/** What the setting changes by when tens and units are exchanged: 253 set as 235 is −18. */
function lastDigitsExchanged(setting: number): number {
  const tens = Math.floor(setting / 10) % 10;
  return 9 * ((setting % 10) - tens);
}

import { type SettingColumns, settingColumns } from './columns';
import { type Component, settingComponents, type UnknownSizes } from './components';
import type { GaugeState, Learned, TechnicianHand } from './learned';
import { type Meeting, meetings, type Places } from './places';
import type { Slip } from './slips';

/** All that a setup away from the zero stations can be. */
export interface PairSettings {
  settings: Component[];
  columns: SettingColumns;
  /** How often the left hanger alone is set wrong, the right one alone, and both. */
  wrong: [left: number, right: number, both: number];
  /** With the bodies that the setup can meet; `only` where no other hangs at the station. */
  meetings: (places: Places, only: boolean) => Meeting[];
}

/** All that a zero setup can be: fine bands first, then the broad ones for meetings of two rare events. */
export interface ZeroSettings {
  settings: Component[];
  logPriors: Float64Array;
  shape: SettingShape;
}

/** What the settings of a zero setup have in common with those of other hands and gauges with the same slips. */
export interface SettingShape {
  /** Where the broad ones begin. */
  broadFrom: number;
  /** In which way each is wrong. */
  ways: Uint8Array;
}

/** Of the first setup that was laid out with these slips. */
interface First {
  columns?: SettingColumns;
  shape?: SettingShape;
}

interface LaidOut {
  pair?: PairSettings;
  zero?: ZeroSettings;
}

/** So many are kept: each takes some kilobytes. */
const MANY = 1024;

/**
 * What setups can be under what was learned. It is the same whenever a hand hangs a gauge at the same points of the
 * same sheet, so it is laid out once.
 */
export class Settings {
  readonly #learned: Learned;
  readonly #fine: UnknownSizes = new Map();
  readonly #broad: UnknownSizes = new Map();
  readonly #known = new Map<TechnicianHand, Map<GaugeState, Map<readonly Slip[], LaidOut>>>();
  readonly #first = new Map<readonly Slip[], First>();
  #count = 0;

  constructor(learned: Learned) {
    this.#learned = learned;
  }

  pair(hand: TechnicianHand, gauge: GaugeState, slips: readonly Slip[]): PairSettings {
    const known = this.#of(hand, gauge, slips);
    return (known.pair ??= this.#pair(hand, gauge, slips));
  }

  zero(hand: TechnicianHand, gauge: GaugeState, slips: readonly Slip[]): ZeroSettings {
    const known = this.#of(hand, gauge, slips);
    return (known.zero ??= this.#zero(hand, gauge, slips));
  }

  #of(hand: TechnicianHand, gauge: GaugeState, slips: readonly Slip[]): LaidOut {
    const known = this.#known.get(hand)?.get(gauge)?.get(slips);
    if (known) return known;
    if (this.#count >= MANY) {
      this.#known.clear();
      this.#first.clear();
      this.#count = 0;
    }
    const byGauge = this.#known.get(hand) ?? new Map<GaugeState, Map<readonly Slip[], LaidOut>>();
    const bySlips = byGauge.get(gauge) ?? new Map<readonly Slip[], LaidOut>();
    this.#known.set(hand, byGauge);
    byGauge.set(gauge, bySlips);
    const fresh: LaidOut = {};
    bySlips.set(slips, fresh);
    this.#count++;
    return fresh;
  }

  #pair(hand: TechnicianHand, gauge: GaugeState, slips: readonly Slip[]): PairSettings {
    const settings = settingComponents(slips, hand, gauge, this.#learned, false, this.#fine);
    const first = this.#firstOf(slips);
    const columns = settingColumns(settings, first.columns);
    first.columns ??= columns;
    const met: { places: Places; only: boolean; meetings: Meeting[] }[] = [];
    return {
      settings,
      columns,
      wrong: wrongOf(hand, this.#learned, settings),
      meetings: (places, only) => {
        const known = met.find((one) => one.places === places && one.only === only);
        if (known) return known.meetings;
        const made = meetings(places, columns, only);
        met.push({ places, only, meetings: made });
        return made;
      },
    };
  }

  #zero(hand: TechnicianHand, gauge: GaugeState, slips: readonly Slip[]): ZeroSettings {
    const fine = settingComponents(slips, hand, gauge, this.#learned, false, this.#fine);
    const broad = settingComponents(slips, hand, gauge, this.#learned, true, this.#broad).slice(1);
    const settings = [...fine, ...broad];
    const logPriors = new Float64Array(settings.length);
    settings.forEach(({ logPrior }, index) => (logPriors[index] = logPrior));
    const first = this.#firstOf(slips);
    first.shape ??= { broadFrom: fine.length, ways: Uint8Array.from(settings, ({ way }) => way) };
    return { settings, logPriors, shape: first.shape };
  }

  #firstOf(slips: readonly Slip[]): First {
    let first = this.#first.get(slips);
    if (!first) this.#first.set(slips, (first = {}));
    return first;
  }
}

function wrongOf(
  hand: TechnicianHand,
  learned: Learned,
  settings: readonly Component[],
): PairSettings['wrong'] {
  const left = hand.missetRate * learned.missets.left;
  const right = hand.missetRate * learned.missets.right;
  // All together is one.
  return [left, right, Math.max(0, 1 - Math.exp(settings[0]?.logPrior ?? 0) - left - right)];
}

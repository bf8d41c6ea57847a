import { columnsOfGauge, type SettingColumns, settingColumns } from './columns';
import { type Component, settingComponents, type UnknownSizes, withMarkOf } from './components';
import { wayOf } from './kinds';
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

/** What a hand's setups at the same points of the same sheet have in common, whatever gauge is hung. */
interface ByHand {
  /** By the gauge that was met first. */
  settings: Component[];
  columns: SettingColumns;
  wrong: PairSettings['wrong'];
  meetings: PairSettings['meetings'];
  /** Of zero setups, once there was one. */
  broad: Component[] | null;
  logPriors: Float64Array | null;
  gauges: Map<GaugeState, ByGauge>;
}

interface ByGauge {
  settings: Component[];
  pair: PairSettings | null;
  zero: ZeroSettings | null;
}

/** What all hands have in common at the same points of the same sheet. */
interface BySlips {
  /** By the hand that was met first. */
  columns: SettingColumns | undefined;
  shape: SettingShape | null;
}

/** About so many are kept, by hand and by gauge: each takes some kilobytes. */
const MANY = 4096;

const OTHER_MARK = wayOf('other-mark');

/**
 * What setups can be under what was learned. It is the same whenever a hand hangs a gauge at the same points of the
 * same sheet, so it is laid out once; and nearly the same whatever gauge that is, so most of it is laid out for all
 * gauges together.
 */
export class Settings {
  readonly #learned: Learned;
  readonly #fine: UnknownSizes = new Map();
  readonly #broad: UnknownSizes = new Map();
  readonly #hands = new Map<TechnicianHand, Map<readonly Slip[], ByHand>>();
  readonly #slips = new Map<readonly Slip[], BySlips>();
  #count = 0;

  constructor(learned: Learned) {
    this.#learned = learned;
  }

  pair(hand: TechnicianHand, gauge: GaugeState, slips: readonly Slip[]): PairSettings {
    const known = this.#handOf(hand, gauge, slips);
    const own = this.#gaugeOf(known, gauge);
    return (own.pair ??= {
      settings: own.settings,
      columns:
        own.settings === known.settings
          ? known.columns
          : columnsOfGauge(own.settings, known.columns, OTHER_MARK),
      wrong: known.wrong,
      meetings: known.meetings,
    });
  }

  zero(hand: TechnicianHand, gauge: GaugeState, slips: readonly Slip[]): ZeroSettings {
    const known = this.#handOf(hand, gauge, slips);
    const own = this.#gaugeOf(known, gauge);
    if (own.zero) return own.zero;
    known.broad ??= settingComponents(slips, hand, gauge, this.#learned, true, this.#broad).slice(1);
    const settings = own.settings.concat(known.broad);
    known.logPriors ??= Float64Array.from(settings, ({ logPrior }) => logPrior);
    const alike = this.#slipsOf(slips);
    alike.shape ??= {
      broadFrom: own.settings.length,
      ways: Uint8Array.from(settings, ({ way }) => way),
    };
    own.zero = { settings, logPriors: known.logPriors, shape: alike.shape };
    return own.zero;
  }

  #handOf(hand: TechnicianHand, gauge: GaugeState, slips: readonly Slip[]): ByHand {
    const found = this.#hands.get(hand)?.get(slips);
    if (found) return found;
    if (this.#count >= MANY) {
      this.#hands.clear();
      this.#slips.clear();
      this.#count = 0;
    }
    this.#count++;
    let bySlips = this.#hands.get(hand);
    if (!bySlips) this.#hands.set(hand, (bySlips = new Map<readonly Slip[], ByHand>()));
    const settings = settingComponents(slips, hand, gauge, this.#learned, false, this.#fine);
    const alike = this.#slipsOf(slips);
    const columns = settingColumns(settings, alike.columns);
    alike.columns ??= columns;
    const made: ByHand = {
      settings,
      columns,
      wrong: wrongOf(hand, this.#learned, settings),
      meetings: meetingsWith(columns),
      broad: null,
      logPriors: null,
      gauges: new Map([[gauge, { settings, pair: null, zero: null }]]),
    };
    bySlips.set(slips, made);
    return made;
  }

  #gaugeOf({ settings, gauges }: ByHand, gauge: GaugeState): ByGauge {
    const known = gauges.get(gauge);
    if (known) return known;
    this.#count++;
    const made: ByGauge = { settings: withMarkOf(gauge, settings), pair: null, zero: null };
    gauges.set(gauge, made);
    return made;
  }

  #slipsOf(slips: readonly Slip[]): BySlips {
    let found = this.#slips.get(slips);
    if (!found) this.#slips.set(slips, (found = { columns: undefined, shape: null }));
    return found;
  }
}

/** Where a setup with these columns can meet what: worked out once for each list of places. */
function meetingsWith(columns: SettingColumns): PairSettings['meetings'] {
  const met: { places: Places; only: boolean; meetings: Meeting[] }[] = [];
  return (places, only) => {
    const known = met.find((one) => one.places === places && one.only === only);
    if (known) return known.meetings;
    const made = meetings(places, columns, only);
    met.push({ places, only, meetings: made });
    return made;
  };
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

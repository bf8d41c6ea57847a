import type { ReadingTable } from '@/lib/measure';
import type { NewNames } from './new-rows';

/** The dimensions of a named sheet, each with a number of its own in the file. */
interface DimensionsOfSheet {
  /** By the number of what is stated; of what is met for the first time none. */
  numberOf(stated: number): number | undefined;
  /** Gives a number to what is met for the first time. @param key its `dimensionKey`. */
  name(stated: number, key: string): number;
}

/** What the pieces of a file that were laid out so far name, so that each name is handed over once. */
export class NamedSoFar {
  #technicians = 0;
  #gauges = 0;
  #labels = 0;
  #dimensions = 0;
  #fresh: NewNames['dimensions'] = [];
  readonly #sheets = new Map<string, DimensionsOfSheet>();

  dimensionsOf(sheet: string): DimensionsOfSheet {
    const known = this.#sheets.get(sheet);
    if (known !== undefined) return known;
    const numbers: (number | undefined)[] = [];
    const made: DimensionsOfSheet = {
      numberOf: (stated) => numbers[stated],
      name: (stated, key) => {
        const number = this.#dimensions++;
        numbers[stated] = number;
        this.#fresh.push({ sheet, key });
        return number;
      },
    };
    this.#sheets.set(sheet, made);
    return made;
  }

  /** All that is named since the last time. */
  take({ technicians, gauges, setups }: ReadingTable['lines']): NewNames {
    const fresh = {
      technicians: technicians.all.slice(this.#technicians),
      gauges: gauges.all.slice(this.#gauges),
      labels: setups.all.slice(this.#labels),
      dimensions: this.#fresh,
    };
    this.#technicians = technicians.all.length;
    this.#gauges = gauges.all.length;
    this.#labels = setups.all.length;
    this.#fresh = [];
    return fresh;
  }
}

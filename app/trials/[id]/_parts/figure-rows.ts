import type { Cell, CsvTable } from '@/app/_figures/download/csv-text';
import { whyTold } from '@/app/_words/why';
import type { OwnPart, TrialAnalysis } from '@/lib/access';
import { NAMES } from './sources';

const COLUMNS = ['figure', 'of', 'value_mm', 'low_95', 'high_95', 'why_none'];

type Estimated = OwnPart['reading'];

const row = (figure: string, of: string, { value, low, high, why }: Estimated): Cell[] => [
  ...[figure, of, value, low, high, whyTold(why)],
];

/** Every figure of a trial with its limits. */
export const trialRows = ({ components, people }: TrialAnalysis): CsvTable => ({
  columns: COLUMNS,
  rows: [
    ...NAMES.map(([key, name]) => row('scatter', name, components[key])),
    ...people.flatMap(({ person, reading, hanging, bias }) => [
      row('reading again', person, reading),
      row('mean of a hanging', person, hanging),
      row('bias', person, bias),
    ]),
  ],
});

/** The own figures, all who took part beside them where that is shown, and the hangings. */
export const ownRows = (own: OwnPart): CsvTable => ({
  columns: COLUMNS,
  rows: [
    row('reading again', 'own', own.reading),
    row('setting and hanging again', 'own', own.setting),
    row('mean of a hanging', 'own', own.hanging),
    row('bias', 'own', own.bias),
    ...(own.band === null
      ? []
      : [
          row('reading again', 'all together', own.band.reading),
          row('setting and hanging again', 'all together', own.band.setting),
        ]),
    ...own.hangings.map(({ point, setup, mean }): Cell[] => [
      ...['hanging', `${point}, ${setup}`, mean, null, null, null],
    ]),
  ],
});

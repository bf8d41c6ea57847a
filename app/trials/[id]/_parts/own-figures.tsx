import { EstimateTable, type Estimate } from '@/app/_figures/estimate-table';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { count, signed, unit } from '@/app/_words/numbers';
import type { OwnPart, TrialView } from '@/lib/access';
import { Hangings } from './hangings';
import { ownDrawing } from './own-drawing';

interface OwnFiguresProps {
  own: OwnPart;
  trial: TrialView;
  /** Of the trial. */
  place: string;
}

/** What a closed trial shows a technician of the own part, beside all who took part; nobody else is named. */
export function OwnFigures({ own, trial, place }: OwnFiguresProps) {
  const { reading, setting, hanging, bias, band, bandWhy, hangings } = own;
  const rests = count(hangings.length, 'hanging');
  const line = (name: string, estimate: OwnPart['reading'], of = rests): Estimate => ({
    ...{ key: name, name, ...estimate },
    rests: of,
  });
  const together = 'all who took part';
  return (
    <>
      <Panel
        id="own"
        title="What it shows of your hand"
        note="Your complete hangings alone, beside all who took part together. Where two intervals overlap widely, the difference may be chance."
      >
        <EstimateTable
          caption="Scatter, standard deviations"
          head="What"
          kind="sd"
          estimates={[
            line('Reading again', reading),
            ...(band === null ? [] : [line('All together, reading again', band.reading, together)]),
            line('Setting and hanging again', setting),
            ...(band === null ? [] : [line('All together, setting', band.setting, together)]),
            line('Mean of a hanging, both in it', hanging),
          ]}
        />
        {bandWhy === null ? (
          <EstimateTable
            caption="Bias against the mean of all who took part, at these points"
            head="What"
            kind="bias"
            estimates={[line('Bias', bias)]}
          />
        ) : (
          <p>{bandWhy}</p>
        )}
      </Panel>
      <Panel id="hangings" title="The hangings behind it">
        <Hangings drawing={ownDrawing(own, trial)} csv={`${place}/figures`} picture={`${place}/picture`} />
        <Table
          caption="Your hangings, deviations from the sheet"
          rows={hangings}
          rowKey={({ point, setup }) => `${point} ${setup}`}
          columns={[
            { key: 'point', head: 'Point', names: true, cell: ({ point }) => point },
            { key: 'setup', head: 'Hanging', numeric: true, cell: ({ setup }) => setup },
            { key: 'n', head: 'Readings', numeric: true, cell: ({ n }) => n },
            { key: 'mean', head: `Mean, ${unit()}`, numeric: true, cell: ({ mean }) => signed(mean, 2) },
          ]}
        />
      </Panel>
    </>
  );
}

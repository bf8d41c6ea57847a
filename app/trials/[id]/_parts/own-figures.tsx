import { EstimateTable, type Estimate } from '@/app/_figures/estimate-table';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { signed, unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
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
  const t = words('trials');
  const { reading, setting, hanging, bias, band, bandWhy, hangings } = own;
  const rests = t('hangings', { n: hangings.length });
  const line = (name: string, estimate: OwnPart['reading'], of = rests): Estimate => ({
    key: name,
    name,
    ...estimate,
    why: whyTold(estimate.why),
    rests: of,
  });
  const together = t('own.together');
  return (
    <>
      <Panel id="own" title={t('own.title')} note={t('own.note')}>
        <EstimateTable
          caption={t('own.scatter')}
          head={t('what')}
          kind="sd"
          estimates={[
            line(t('own.reading'), reading),
            ...(band === null ? [] : [line(t('own.allReading'), band.reading, together)]),
            line(t('own.setting'), setting),
            ...(band === null ? [] : [line(t('own.allSetting'), band.setting, together)]),
            line(t('own.hanging'), hanging),
          ]}
        />
        {bandWhy === null ? (
          <EstimateTable
            caption={t('own.biasCaption')}
            head={t('what')}
            kind="bias"
            estimates={[line(t('own.bias'), bias)]}
          />
        ) : (
          <p>{told(bandWhy)}</p>
        )}
      </Panel>
      <Panel id="hangings" title={t('own.behind')}>
        <Hangings drawing={ownDrawing(own, trial)} csv={`${place}/figures`} picture={`${place}/picture`} />
        <Table
          caption={t('own.caption')}
          rows={hangings}
          rowKey={({ point, setup }) => `${point} ${setup}`}
          columns={[
            { key: 'point', head: t('own.point'), names: true, cell: ({ point }) => point },
            { key: 'setup', head: t('own.setup'), numeric: true, cell: ({ setup }) => setup },
            { key: 'n', head: t('own.readings'), numeric: true, cell: ({ n }) => n },
            {
              key: 'mean',
              head: t('own.mean', { unit: unit() }),
              numeric: true,
              cell: ({ mean }) => signed(mean, 2),
            },
          ]}
        />
      </Panel>
    </>
  );
}

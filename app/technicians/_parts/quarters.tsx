import { DownloadLinks } from '@/app/_figures/download/download-links';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import type { HandQuarter } from '@/lib/assess/my-hand';
import { quarterDrawing } from './quarter-drawing';
import { FOLLOWED, pointsOf, told, type Followed } from './quarter-points';
import styles from './quarters.module.css';

interface QuartersProps {
  quarters: readonly HandQuarter[];
  /** Whether the address leaves quarters out. */
  held: boolean;
  /** Where each figure is had as a picture. */
  pictures: (key: Followed['key']) => string;
}

/** This hand over time beside the shop's band. */
export function Quarters({ quarters, held, pictures }: QuartersProps) {
  const withheld = quarters.find(({ shopWhy }) => shopWhy !== null)?.shopWhy;
  return (
    <Panel
      id="quarters"
      title="Over time"
      note="By quarter. The dot is this hand, the stroke its 95 % interval, the box the interval of the shop as a whole."
    >
      {quarters.length === 0 && (
        <p>
          {held ? 'No quarter with readings lies in what was asked for.' : 'There is no quarter to show yet.'}
        </p>
      )}
      {quarters.length > 0 &&
        FOLLOWED.map((followed) => (
          <figure key={followed.key} className={styles.stack}>
            <h3>{followed.title}, mm</h3>
            <StillDrawing drawing={quarterDrawing(followed, pointsOf(quarters, followed))} />
            <DownloadLinks of={`${followed.title} by quarter`} picture={pictures(followed.key)} />
          </figure>
        ))}
      {withheld != null && <p>{withheld}</p>}
      {quarters.length > 0 && (
        <details>
          <summary>The quarters as a table</summary>
          <Table
            caption="This hand and the shop by quarter, with 95 % intervals"
            rows={quarters.flatMap((quarter) => [
              {
                key: `${quarter.quarter} own`,
                who: 'this hand',
                quarter: quarter.quarter,
                figures: quarter.own,
              },
              ...(quarter.shop === null
                ? []
                : [
                    {
                      key: `${quarter.quarter} shop`,
                      who: 'the shop',
                      quarter: quarter.quarter,
                      figures: quarter.shop,
                    },
                  ]),
            ])}
            rowKey={({ key }) => key}
            columns={[
              {
                key: 'quarter',
                head: 'Quarter',
                names: true,
                cell: ({ quarter, who }) => `${quarter}, ${who}`,
              },
              ...FOLLOWED.map(({ key, title, of, print }) => ({
                key,
                head: title,
                numeric: true,
                cell: ({ figures }: { figures: HandQuarter['own'] }) => told(of(figures), print),
              })),
            ]}
          />
        </details>
      )}
    </Panel>
  );
}

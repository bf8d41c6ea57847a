import { drawnOnce } from '@/app/_look/still';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { address } from '@/app/_words/address';
import { unit } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { HandQuarter } from '@/lib/assess/my-hand';
import type { HandQuestion } from './hand-question';
import { quarterDrawing } from './quarter-drawing';
import { estimatedWords, FOLLOWED, followedTitle, pointsOf } from './quarter-points';
import styles from './quarters.module.css';

interface QuartersProps {
  quarters: readonly HandQuarter[];
  /** Whether the address leaves quarters out. */
  held: boolean;
  /** The page of this hand, and what it is asked. */
  here: string;
  question: HandQuestion;
}

/** This hand over time beside the shop's band. */
export const Quarters = drawnOnce(function Quarters({ quarters, held, here, question }: QuartersProps) {
  const t = words('hand');
  const withheld = quarters.find(({ shopWhy }) => shopWhy !== null)?.shopWhy;
  return (
    <Panel id="quarters" title={t('quarters.title')} note={t('quarters.note')}>
      {quarters.length === 0 && <p>{held ? t('quarters.noneHeld') : t('quarters.none')}</p>}
      {quarters.length > 0 &&
        FOLLOWED.map((followed) => (
          <figure key={followed.key} className={styles.stack}>
            <h3>{t('quarters.head', { title: followedTitle(followed), unit: unit() })}</h3>
            <StillDrawing drawing={quarterDrawing(followed, pointsOf(quarters, followed))} />
            <DownloadLinks
              of={t('quarters.download', { title: followedTitle(followed) })}
              picture={address(`${here}/picture`, { ...question, of: followed.key })}
            />
          </figure>
        ))}
      {withheld != null && <p>{told(withheld)}</p>}
      {quarters.length > 0 && (
        <details>
          <summary>{t('quarters.table')}</summary>
          <Table
            caption={t('quarters.caption')}
            rows={quarters.flatMap((quarter) => [
              {
                key: `${quarter.quarter} own`,
                name: t('quarters.own', { quarter: quarter.quarter }),
                figures: quarter.own,
              },
              ...(quarter.shop === null
                ? []
                : [
                    {
                      key: `${quarter.quarter} shop`,
                      name: t('quarters.shop', { quarter: quarter.quarter }),
                      figures: quarter.shop,
                    },
                  ]),
            ])}
            rowKey={({ key }) => key}
            columns={[
              {
                key: 'quarter',
                head: t('quarters.quarter'),
                names: true,
                cell: ({ name }) => name,
              },
              ...FOLLOWED.map((followed) => ({
                key: followed.key,
                head: followedTitle(followed),
                numeric: true,
                cell: ({ figures }: { figures: HandQuarter['own'] }) =>
                  estimatedWords(followed.of(figures), followed.print),
              })),
            ]}
          />
        </details>
      )}
    </Panel>
  );
});

import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Page } from '@/app/_look/page';
import { Table } from '@/app/_look/table';
import { enter } from '@/app/_shop/enter';
import { unit } from '@/app/_words/numbers';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { getTrial } from '@/lib/access';
import { trialOfPage } from '@/app/trials/_parts/trial-number';
import { trialAddress } from '@/app/trials/_parts/words';
import styles from './sheet.module.css';

export const generateMetadata = titled(() => words('trials')('sheet.title'));

/** The order of the work on paper, with room to write; without sheet values, like the screen. */
export default async function RunSheet({ params }: { params: Promise<{ id: string }> }) {
  const id = trialOfPage((await params).id);
  const viewer = await enter();
  const trial = await getTrial(viewer, id);
  if (trial === null) notFound();
  const t = words('trials');
  const repeats = Array.from({ length: trial.plan.readings }, (_, index) => index + 1);
  return (
    <Page
      above={<Link href={trialAddress(id)}>{trial.name}</Link>}
      title={t('sheet.of', { name: trial.name })}
      lead={t('sheet.lead')}
    >
      <Table
        caption={t('sheet.caption', { n: trial.runs.length })}
        rows={trial.runs}
        rowKey={({ order }) => String(order)}
        columns={[
          { key: 'run', head: t('sheet.run'), names: true, cell: ({ order }) => order },
          { key: 'person', head: t('sheet.who'), cell: ({ person }) => person },
          { key: 'point', head: t('sheet.point'), cell: ({ point }) => point },
          { key: 'setup', head: t('sheet.hanging'), numeric: true, cell: ({ setup }) => setup },
          ...repeats.map((repeat) => ({
            key: `reading ${repeat}`,
            head: t('sheet.reading', { n: repeat, unit: unit() }),
            cell: () => (
              <span className={styles.blank}>
                <span className="out-of-sight">{t('sheet.blank')}</span>
              </span>
            ),
          })),
        ]}
      />
    </Page>
  );
}

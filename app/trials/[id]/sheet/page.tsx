import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Page } from '@/app/_look/page';
import { Table } from '@/app/_look/table';
import { enter } from '@/app/_shop/enter';
import { count } from '@/app/_words/numbers';
import { getTrial } from '@/lib/access';
import { trialOfPage } from '@/app/trials/_parts/trial-number';
import { trialAddress } from '@/app/trials/_parts/words';
import styles from './sheet.module.css';

export const metadata: Metadata = { title: 'Run sheet' };

/** The order of the work on paper, with room to write; without sheet values, like the screen. */
export default async function RunSheet({ params }: { params: Promise<{ id: string }> }) {
  const id = trialOfPage((await params).id);
  const viewer = await enter();
  const trial = await getTrial(viewer, id);
  if (trial === null) notFound();
  const repeats = Array.from({ length: trial.plan.readings }, (_, index) => index + 1);
  return (
    <Page
      above={<Link href={trialAddress(id)}>{trial.name}</Link>}
      title={`Run sheet: ${trial.name}`}
      lead="Work from the top down. For every line take the gauge off, set it anew and hang it; between the readings of a line leave it untouched. Do not look at the sheet or at earlier readings."
    >
      <Table
        caption={`${count(trial.runs.length, 'hanging')} in the order of the work; print this page to write on it`}
        rows={trial.runs}
        rowKey={({ order }) => String(order)}
        columns={[
          { key: 'run', head: 'Run', names: true, cell: ({ order }) => order },
          { key: 'person', head: 'Who', cell: ({ person }) => person },
          { key: 'point', head: 'Point', cell: ({ point }) => point },
          { key: 'setup', head: 'Hanging', numeric: true, cell: ({ setup }) => setup },
          ...repeats.map((repeat) => ({
            key: `reading ${repeat}`,
            head: `Reading ${repeat}, mm`,
            cell: () => (
              <span className={styles.blank}>
                <span className="out-of-sight">to be written</span>
              </span>
            ),
          })),
        ]}
      />
    </Page>
  );
}

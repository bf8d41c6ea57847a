import type { Metadata } from 'next';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { address } from '@/app/_words/address';
import { countJobs, currentFigures, demand, habitsAnswer } from '@/lib/access';
import { byTechnician } from './_parts/by-technician';
import { falseAlarmWords } from './_parts/false-alarms';
import { FoundList } from './_parts/found-list';
import { Matrix } from './_parts/matrix';

export const metadata: Metadata = { title: 'Habits' };

export default async function Habits() {
  const viewer = await enter();
  demand(viewer, 'see everybody’s figures');
  const [cells, figures, jobs] = await Promise.all([
    habitsAnswer(viewer),
    currentFigures(viewer),
    countJobs(viewer),
  ]);
  if (jobs === 0) return <NothingYet title="Habits" />;
  if (cells === null) return <FiguresPending title="Habits" />;
  const hands = byTechnician(cells);
  return (
    <Page
      title="Habits"
      lead="What the readings themselves show of how each technician sets, reads and goes about a round. A habit is something to train, not a fault to count."
      actions={
        <a className={button.button} href={address('/habits/download', {})}>
          Download as CSV
        </a>
      }
    >
      <FiguresAge fit={figures} timeZone={viewer.shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <Panel id="found" title="Found">
        <FoundList
          cells={hands.flatMap(({ cells: own }) => own)}
          named
          empty="No habit was found in any technician’s readings."
        />
        <Note>
          <p>{falseAlarmWords(cells)}</p>
        </Note>
      </Panel>
      <Panel
        id="matrix"
        title="Every technician, every habit"
        note="“Not found”: a habit of a size worth training would have shown in these readings. “Too few readings”: it could hardly have shown yet."
      >
        <Matrix hands={hands} />
      </Panel>
    </Page>
  );
}

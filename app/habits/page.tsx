import type { Metadata } from 'next';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { address, type Query } from '@/app/_words/address';
import { countJobs, currentFigures, demand } from '@/lib/access';
import { askedHabits } from './_parts/asked-habits';
import { byTechnician } from './_parts/by-technician';
import { falseAlarmWords } from './_parts/false-alarms';
import { HabitFilter } from './_parts/habit-filter';
import { isSpan, placesOf } from './_parts/habit-question';
import { FoundList } from './_parts/found-list';
import { Matrix } from './_parts/matrix';

export const metadata: Metadata = { title: 'Habits' };

export default async function Habits({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  demand(viewer, 'see everybody’s figures');
  const [asked, figures, jobs] = await Promise.all([
    searchParams.then((query) => askedHabits(viewer, query)),
    currentFigures(viewer),
    countJobs(viewer),
  ]);
  if (jobs === 0) return <NothingYet title="Habits" />;
  const { cells, question } = asked;
  if (cells === null) return <FiguresPending title="Habits" />;
  const everybody = byTechnician(cells);
  const hands = everybody.filter(
    ({ technician }) => question.technician === undefined || technician === question.technician,
  );
  const place = placesOf(question);
  return (
    <Page
      title="Habits"
      lead="What the readings themselves show of how each technician sets, reads and goes about a round. A habit is something to train, not a fault to count."
    >
      <FiguresAge fit={figures} timeZone={viewer.shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <HabitFilter to="/habits" asked={asked} technicians={everybody.map(({ technician }) => technician)} />
      <Panel id="found" title="Found">
        <FoundList
          cells={hands.flatMap(({ cells: own }) => own)}
          named
          empty={
            isSpan(question) || question.technician !== undefined
              ? 'No habit was found in what was asked for.'
              : 'No habit was found in any technician’s readings.'
          }
          place={place}
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
        {hands.length === 0 ? (
          <p>No job lies in what was asked for.</p>
        ) : (
          <Matrix hands={hands} place={place} />
        )}
        <DownloadLinks
          of="habits by technician"
          csv={address('/habits/download', { ...question })}
          picture={address('/habits/picture', { ...question })}
        />
      </Panel>
    </Page>
  );
}

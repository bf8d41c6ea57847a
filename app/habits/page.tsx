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
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { countJobs, currentFigures, demand } from '@/lib/access';
import { askedHabits } from './_parts/asked-habits';
import { byTechnician } from './_parts/by-technician';
import { falseAlarmWords } from './_parts/false-alarms';
import { HabitFilter } from './_parts/habit-filter';
import { isSpan, placesOf } from './_parts/habit-question';
import { FoundList } from './_parts/found-list';
import { Matrix } from './_parts/matrix';

export const generateMetadata = titled(() => words('habits')('title'));

export default async function Habits({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const t = words('habits');
  demand(viewer, 'see everybody’s figures');
  const [asked, figures, jobs] = await Promise.all([
    searchParams.then((query) => askedHabits(viewer, query)),
    currentFigures(viewer),
    countJobs(viewer),
  ]);
  if (jobs === 0) return <NothingYet title={t('title')} />;
  const { cells, question, notes, choices } = asked;
  if (cells === null) return <FiguresPending title={t('title')} />;
  const everybody = byTechnician(cells);
  const hands =
    question.technician === undefined
      ? everybody
      : everybody.filter(({ technician }) => technician === question.technician);
  const place = placesOf(question);
  return (
    <Page title={t('title')} lead={t('lead')}>
      <FiguresAge fit={figures} timeZone={viewer.shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <HabitFilter
        to="/habits"
        {...{ question, notes, choices }}
        technicians={everybody.map(({ technician }) => technician)}
      />
      <Panel id="found" title={t('found.title')}>
        <FoundList
          cells={hands.flatMap(({ cells: own }) => own)}
          named
          empty={
            isSpan(question) || question.technician !== undefined ? t('found.noneAsked') : t('found.none')
          }
          place={place}
        />
        <Note>
          <p>{falseAlarmWords(cells)}</p>
        </Note>
      </Panel>
      <Panel id="matrix" title={t('matrix.title')} note={t('matrix.note')}>
        {hands.length === 0 ? <p>{t('matrix.nothing')}</p> : <Matrix hands={hands} question={question} />}
        <DownloadLinks
          of={t('matrix.download')}
          csv={address('/habits/download', { ...question })}
          picture={address('/habits/picture', { ...question })}
        />
      </Panel>
    </Page>
  );
}

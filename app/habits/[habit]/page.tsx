import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { firstOf, address, technicianAddress, type Query } from '@/app/_words/address';
import { habitName } from '@/app/_words/habit-name';
import { effectName } from '@/app/_words/habits';
import { inOrder } from '@/app/_words/in-order';
import { pageNumber } from '@/app/_words/page-number';
import { hear } from '@/app/_words/speech';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { currentFigures, may, namedSetups } from '@/lib/access';
import { HABIT_TEXTS, HABITS, type HabitKey } from '@/lib/assess/habits';
import { About } from '../_parts/about';
import { askedHabits } from '../_parts/asked-habits';
import { ofHabit } from '../_parts/by-technician';
import { EffectTables } from '../_parts/effect-table';
import { Evidence } from '../_parts/evidence';
import { falseAlarmWords } from '../_parts/false-alarms';
import { HabitFilter } from '../_parts/habit-filter';
import { isSpan } from '../_parts/habit-question';
import { ShownSetups } from '../_parts/shown-setups';

interface Props {
  params: Promise<{ habit: string }>;
  searchParams: Promise<Query>;
}

const SETUPS_A_PAGE = 20;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const habit = habitFrom((await params).habit);
  await hear();
  return { title: habitName(habit) };
}

export default async function HabitPage({ params, searchParams }: Props) {
  const habit = habitFrom((await params).habit);
  const query = await searchParams;
  const viewer = await enter();
  const t = words('habits');
  const all = may(viewer, 'see everybody’s figures');
  const [asked, figures] = await Promise.all([askedHabits(viewer, query), currentFigures(viewer)]);
  const { cells: answer, question, notes, choices } = asked;
  const cells = ofHabit(answer ?? [], habit);
  const whose = all ? firstOf(query, 'technician') : viewer.code;
  const cell = cells.find(({ technician }) => technician === whose);
  if (all && whose !== undefined && cell === undefined && answer !== null && !isSpan(question)) notFound();
  const files = { ...question, technician: undefined, habit };
  const page = pageNumber(query);
  const shown = cell?.shownBy ?? [];
  const setups =
    cell === undefined
      ? []
      : await namedSetups(
          viewer,
          cell.technician,
          shown.slice((page - 1) * SETUPS_A_PAGE, page * SETUPS_A_PAGE),
        );
  const name = habitName(habit);
  return (
    <Page
      above={
        all ? (
          <Link href={address('/habits', { ...question, technician: undefined })}>{t('all')}</Link>
        ) : (
          <Link href={technicianAddress(viewer.code)}>{t('myHand')}</Link>
        )
      }
      title={name}
      lead={told(HABIT_TEXTS[habit].what)}
    >
      <FiguresAge fit={figures} timeZone={viewer.shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <HabitFilter
        to={`/habits/${habit}`}
        {...{ question, notes, choices }}
        technicians={all ? cells.map(({ technician }) => technician).sort(inOrder) : []}
      />
      {cell === undefined && whose !== undefined && answer !== null && (
        <Note>
          <p>{t('technicians.nothing', { technician: whose })}</p>
        </Note>
      )}
      {cell !== undefined && (
        <Evidence
          cell={cell}
          setups={`${address(technicianAddress(cell.technician), { last: question.last, from: question.from, to: question.to, sheet: question.sheet })}#setups`}
        />
      )}
      <About text={HABIT_TEXTS[habit]} />
      {cell !== undefined && shown.length > 0 && (
        <ShownSetups
          cell={cell}
          setups={setups}
          page={page}
          pages={Math.ceil(shown.length / SETUPS_A_PAGE)}
          timeZone={viewer.shop.timeZone}
          to={(number) => address(`/habits/${habit}`, { ...question, technician: whose, page: number })}
        />
      )}
      {all && cells.length > 0 && (
        <Panel
          id="technicians"
          title={t('technicians.title')}
          note={t('technicians.note', {
            effect: effectName(habit),
            falseAlarms: falseAlarmWords(answer ?? []),
          })}
        >
          <EffectTables
            cells={cells}
            caption={t('technicians.caption', { habit: name })}
            habit={habit}
            question={question}
          />
          <DownloadLinks of={name} csv={address('/habits/download', files)} />
        </Panel>
      )}
    </Page>
  );
}

/** The habit that an address names; any other is a page that does not exist. */
function habitFrom(segment: string): HabitKey {
  return HABITS.find((habit) => habit === segment) ?? notFound();
}

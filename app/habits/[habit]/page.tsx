import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { firstOf, address, technicianAddress, type Query } from '@/app/_words/address';
import { EFFECT_NAMES } from '@/app/_words/habits';
import { pageNumber } from '@/app/_words/page-number';
import { currentFigures, habitsAnswer, may, namedSetups } from '@/lib/access';
import { HABIT_TEXTS, HABITS, type HabitKey } from '@/lib/assess/habits';
import { About } from '../_parts/about';
import { ofHabit } from '../_parts/by-technician';
import { EffectTables } from '../_parts/effect-table';
import { Evidence } from '../_parts/evidence';
import { falseAlarmWords } from '../_parts/false-alarms';
import { ShownSetups } from '../_parts/shown-setups';

interface Props {
  params: Promise<{ habit: string }>;
  searchParams: Promise<Query>;
}

const SETUPS_A_PAGE = 20;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: HABIT_TEXTS[habitFrom((await params).habit)].name };
}

export default async function HabitPage({ params, searchParams }: Props) {
  const habit = habitFrom((await params).habit);
  const query = await searchParams;
  const viewer = await enter();
  const all = may(viewer, 'see everybody’s figures');
  const [answer, figures] = await Promise.all([habitsAnswer(viewer), currentFigures(viewer)]);
  const cells = ofHabit(answer ?? [], habit);
  const whose = all ? firstOf(query, 'technician') : viewer.code;
  const cell = cells.find(({ technician }) => technician === whose);
  if (all && whose !== undefined && cell === undefined && answer !== null) notFound();
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
  const { name, what } = HABIT_TEXTS[habit];
  return (
    <Page
      above={
        all ? (
          <Link href="/habits">All habits</Link>
        ) : (
          <Link href={technicianAddress(viewer.code)}>My hand</Link>
        )
      }
      title={name}
      lead={what}
      actions={
        all && (
          <a className={button.button} href={address('/habits/download', { habit })}>
            Download as CSV
          </a>
        )
      }
    >
      <FiguresAge fit={figures} timeZone={viewer.shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      {cell !== undefined && <Evidence cell={cell} />}
      <About text={HABIT_TEXTS[habit]} />
      {cell !== undefined && shown.length > 0 && (
        <ShownSetups
          cell={cell}
          setups={setups}
          page={page}
          pages={Math.ceil(shown.length / SETUPS_A_PAGE)}
          timeZone={viewer.shop.timeZone}
        />
      )}
      {all && cells.length > 0 && (
        <Panel
          id="technicians"
          title="Every technician"
          note={`${EFFECT_NAMES[habit]}, in the order of codes. The dot is the figure, the stroke its 95 % interval, the dashed line what the other hands show or what is expected without the habit. ${falseAlarmWords(answer ?? [])}`}
        >
          <EffectTables cells={cells} caption={`${name}, by technician: each code opens its evidence`} />
        </Panel>
      )}
    </Page>
  );
}

/** The habit that an address names; any other is a page that does not exist. */
function habitFrom(segment: string): HabitKey {
  return HABITS.find((habit) => habit === segment) ?? notFound();
}

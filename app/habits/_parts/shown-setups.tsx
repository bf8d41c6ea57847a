import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { count } from '@/app/_words/numbers';
import type { SetupRow } from '@/lib/access';
import type { HabitCell } from '@/lib/assess/habits';
import { SetupList } from './setup-list';

interface ShownSetupsProps {
  cell: HabitCell;
  /** This page of them. */
  setups: SetupRow[];
  page: number;
  pages: number;
  timeZone: string;
  /** This page with another part of them. */
  to: (page: number) => string;
}

/** The setups in which one technician's habit shows, each leading to its readings. */
export function ShownSetups({ cell, setups, page, pages, timeZone, to }: ShownSetupsProps) {
  const { technician, shownBy } = cell;
  return (
    <Panel
      id="shown"
      title="The setups that show it"
      note={`The newest ${count(shownBy.length, 'setup')} of ${technician} that show it. Each opens its readings on the job’s page.`}
    >
      <SetupList setups={setups} timeZone={timeZone} caption="Setups that show it, newest first" />
      <Pager page={page} pages={pages} to={(number) => `${to(number)}#shown`} />
    </Panel>
  );
}

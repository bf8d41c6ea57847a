import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { address } from '@/app/_words/address';
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
}

/** The setups in which one technician's habit shows, each leading to its readings. */
export function ShownSetups({ cell, setups, page, pages, timeZone }: ShownSetupsProps) {
  const { technician, habit, shownBy } = cell;
  return (
    <Panel
      id="shown"
      title="The setups that show it"
      note={`The newest ${count(shownBy.length, 'setup')} of ${technician} that show it. Each opens its readings on the job’s page.`}
    >
      <SetupList setups={setups} timeZone={timeZone} caption="Setups that show it, newest first" />
      <Pager
        page={page}
        pages={pages}
        to={(number) => `${address(`/habits/${habit}`, { technician, page: number })}#shown`}
      />
    </Panel>
  );
}

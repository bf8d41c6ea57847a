import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { words } from '@/app/_words/words';
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
  const t = words('habits');
  const { technician, shownBy } = cell;
  return (
    <Panel id="shown" title={t('shown.title')} note={t('shown.note', { n: shownBy.length, technician })}>
      <SetupList setups={setups} timeZone={timeZone} caption={t('shown.caption')} />
      <Pager page={page} pages={pages} to={(number) => `${to(number)}#shown`} />
    </Panel>
  );
}

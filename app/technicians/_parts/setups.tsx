import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { drawnOnce } from '@/app/_look/still';
import type { Hands } from '@/app/_shop/hand-link';
import { address } from '@/app/_words/address';
import { words } from '@/app/_words/words';
import type { SetupRow } from '@/lib/access';
import type { HandQuestion } from './hand-question';
import { SetupTable } from './setup-table';

interface SetupsProps {
  setups: readonly SetupRow[];
  /** How many there are on all pages. */
  total: number;
  page: number;
  pages: number;
  code: string;
  /** The page of this hand, and what it is asked. */
  here: string;
  question: HandQuestion;
  timeZone: string;
  hands: Hands;
}

/** What this hand hung, the newest first, some on a page. */
export const Setups = drawnOnce(function Setups(props: SetupsProps) {
  const { setups, total, page, pages, code, here, question, timeZone, hands } = props;
  const { gauge } = question;
  const t = words('hand');
  return (
    <Panel id="setups" title={t('setups.title')} note={t('setups.note')}>
      <SetupTable
        setups={setups}
        timeZone={timeZone}
        hands={hands}
        show="gauge"
        caption={
          gauge === undefined
            ? t('setups.caption', { n: total, code })
            : t('setups.captionWith', { n: total, code, gauge })
        }
      />
      <Pager
        page={page}
        pages={pages}
        to={(number) => `${address(here, { ...question, page: number })}#setups`}
      />
    </Panel>
  );
});

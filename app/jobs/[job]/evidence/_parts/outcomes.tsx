import { z } from 'zod';
import { Note } from '@/app/_look/note';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { sideName } from '@/app/_words/dimensions';
import { causeProved } from '@/app/_words/proved';
import { dayAndTime } from '@/app/_words/times';
import type { Round } from '@/lib/measure';
import { OutcomeForm } from './outcome-form';
import type { RecheckOutcome } from '@/lib/access';
import { words } from '@/app/_words/words';

/** What became of the form that was sent, by the word in the address. */
const answerSchema = z.enum(['recorded', 'incomplete', 'unknown']);

interface OutcomesProps {
  round: Round;
  outcomes: RecheckOutcome[];
  /** Code of whoever looks at the page. */
  by: string;
  answer: string | undefined;
  timeZone: string;
}

/** What re-checks showed in this round, and the form to say it. */
export function Outcomes({ round, outcomes, by, answer, timeZone }: OutcomesProps) {
  const setups = new Set(round.setups.map(({ label }) => label));
  const said = answerSchema.safeParse(answer).data;
  const t = words('evidence');
  return (
    <Panel id="outcome" title={t('outcome.title')} note={t('outcome.about')}>
      {said !== undefined && (
        <Note kind={said === 'recorded' ? 'plain' : 'fault'} live>
          <p>{t(`outcome.answers.${said}`)}</p>
        </Note>
      )}
      <Table
        caption={t('outcome.caption')}
        rows={outcomes.filter(({ setup }) => setups.has(setup))}
        rowKey={({ setup, side, at, cause }) => `${setup} ${side ?? ''} ${at} ${cause}`}
        empty={t('outcome.none')}
        columns={[
          {
            key: 'height',
            head: t('outcome.head'),
            names: true,
            cell: ({ setup, side }) => `${pointOf(round, setup, side)} (${setup})`,
          },
          { key: 'cause', head: t('outcome.itWas'), whole: true, cell: ({ cause }) => causeProved(cause) },
          { key: 'by', head: t('outcome.by'), whole: true, cell: ({ by: who }) => who ?? t('outcome.aFile') },
          { key: 'at', head: t('outcome.when'), whole: true, cell: ({ at }) => dayAndTime(at, timeZone) },
          { key: 'note', head: t('outcome.noteHead'), cell: ({ note }) => note ?? '' },
        ]}
      />
      <OutcomeForm round={round} by={by} />
    </Panel>
  );
}

function pointOf(round: Round, label: string, side: 'L' | 'R' | null): string {
  const setup = round.setups.find((one) => one.label === label);
  const seen = setup?.observations.find((one) => one.side === side);
  if (seen === undefined || side === null) return seen?.point ?? '?';
  return `${seen.point} ${sideName(side)}`;
}

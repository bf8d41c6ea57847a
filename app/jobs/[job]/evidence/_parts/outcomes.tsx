import { Note } from '@/app/_look/note';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { sideName } from '@/app/_words/dimensions';
import { causeProved } from '@/app/_words/proved';
import { dayAndTime } from '@/app/_words/times';
import type { Round } from '@/lib/measure';
import { OutcomeForm } from './outcome-form';
import type { RecheckOutcome } from '@/lib/access';

/** What became of the form that was sent, by the word in the address. */
const ANSWERS: Record<string, { kind: 'plain' | 'fault'; words: string }> = {
  recorded: {
    kind: 'plain',
    words:
      'Recorded. The verdicts of this round follow in a moment, what the shop has learned a little later: reload the page then.',
  },
  incomplete: {
    kind: 'fault',
    words: 'Nothing was recorded: choose the height and what was off.',
  },
  unknown: {
    kind: 'fault',
    words: 'Nothing was recorded: there is no such setup in this job. Choose again.',
  },
};

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
  const told = answer === undefined ? undefined : ANSWERS[answer];
  return (
    <Panel
      id="outcome"
      title="What a re-check showed"
      note="Verdicts and learning follow what is recorded here; the last record of a height counts, all stay. A gauge that was hung again in this round needs no record: its readings tell."
    >
      {told !== undefined && (
        <Note kind={told.kind} live>
          <p>{told.words}</p>
        </Note>
      )}
      <Table
        caption="On record for this round, newest first"
        rows={outcomes.filter(({ setup }) => setups.has(setup))}
        rowKey={({ setup, side, at, cause }) => `${setup} ${side ?? ''} ${at} ${cause}`}
        empty="Nothing is on record for this round yet."
        columns={[
          {
            key: 'height',
            head: 'Height',
            names: true,
            cell: ({ setup, side }) => `${pointOf(round, setup, side)} (${setup})`,
          },
          { key: 'cause', head: 'It was', whole: true, cell: ({ cause }) => causeProved(cause) },
          { key: 'by', head: 'Said by', whole: true, cell: ({ by }) => by ?? 'a file' },
          { key: 'at', head: 'When', whole: true, cell: ({ at }) => dayAndTime(at, timeZone) },
          { key: 'note', head: 'Note', cell: ({ note }) => note ?? '' },
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

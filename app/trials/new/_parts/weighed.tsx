import button from '@/app/_look/button.module.css';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { count, percent } from '@/app/_words/numbers';
import type { TrialPlan, weighPlan } from '@/lib/access';

interface WeighedProps {
  plan: Pick<TrialPlan, 'points' | 'people' | 'setups' | 'readings'>;
  weighed: ReturnType<typeof weighPlan>;
  /** What it was planned with, in words. */
  scatter: string;
}

/** What the plan would find and how many hangings it takes, before it is created. */
export function Weighed({ plan, weighed: { power, needed }, scatter }: WeighedProps) {
  const each = plan.points.length * plan.people.length;
  const wanted = needed.size?.setups ?? null;
  const shown = needed.options.filter(
    ({ setups }) => setups <= Math.max(plan.setups, wanted ?? 0) + 2 || setups === needed.options.length,
  );
  return (
    <Panel id="found" title="What this plan finds" note={scatter}>
      <p>
        <strong>
          As planned, with {count(plan.setups, 'hanging')} of each person at each point, it finds what is
          asked for in {percent(power)} of such trials.
        </strong>{' '}
        {wanted === null || wanted > plan.setups
          ? 'That leaves too much to chance: four in five is usual.'
          : 'Four in five is usual.'}
      </p>
      <p>{wanted === null ? needed.sentence : `For four in five: ${needed.sentence}`}</p>
      <Table
        caption="By how often each person hangs at each point"
        rows={shown}
        rowKey={({ setups }) => String(setups)}
        columns={[
          {
            key: 'setups',
            head: 'Hangings each',
            names: true,
            cell: ({ setups }) => `${setups}${setups === plan.setups ? ', as planned' : ''}`,
          },
          { key: 'found', head: 'Finds it in', numeric: true, cell: (option) => percent(option.power) },
          { key: 'all', head: 'Hangings in all', numeric: true, cell: ({ setups }) => setups * each },
          {
            key: 'readings',
            head: 'Readings in all',
            numeric: true,
            cell: ({ setups }) => setups * each * plan.readings,
          },
        ]}
      />
      <div>
        <button
          type="submit"
          form="plan"
          formAction="/trials/new/create"
          formMethod="post"
          className={button.strong}
        >
          Create the trial
        </button>
      </div>
    </Panel>
  );
}

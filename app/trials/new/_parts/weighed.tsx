import button from '@/app/_look/button.module.css';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { percent } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { TrialPlan, weighPlan } from '@/lib/access';

interface WeighedProps {
  plan: Pick<TrialPlan, 'points' | 'people' | 'setups' | 'readings'>;
  weighed: ReturnType<typeof weighPlan>;
  /** What it was planned with, in words. */
  scatter: string;
}

/** What the plan would find and how many hangings it takes, before it is created. */
export function Weighed({ plan, weighed: { power, needed }, scatter }: WeighedProps) {
  const t = words('trials');
  const each = plan.points.length * plan.people.length;
  const wanted = needed.size?.setups ?? null;
  const shown = needed.options.filter(
    ({ setups }) => setups <= Math.max(plan.setups, wanted ?? 0) + 2 || setups === needed.options.length,
  );
  return (
    <Panel id="found" title={t('weighed.title')} note={scatter}>
      <p>
        <strong>{t('weighed.found', { n: plan.setups, power: percent(power) })}</strong>{' '}
        {wanted === null || wanted > plan.setups ? t('weighed.tooLittle') : t('weighed.usual')}
      </p>
      <p>
        {wanted === null ? told(needed.sentence) : t('weighed.needed', { sentence: told(needed.sentence) })}
      </p>
      <Table
        caption={t('weighed.caption')}
        rows={shown}
        rowKey={({ setups }) => String(setups)}
        columns={[
          {
            key: 'setups',
            head: t('weighed.each'),
            names: true,
            cell: ({ setups }) =>
              setups === plan.setups ? t('weighed.asPlanned', { n: setups }) : String(setups),
          },
          {
            key: 'found',
            head: t('weighed.findsIn'),
            numeric: true,
            cell: (option) => percent(option.power),
          },
          { key: 'all', head: t('weighed.hangings'), numeric: true, cell: ({ setups }) => setups * each },
          {
            key: 'readings',
            head: t('weighed.readings'),
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
          {t('weighed.create')}
        </button>
      </div>
    </Panel>
  );
}

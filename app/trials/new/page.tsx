import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { firstOf, type Query } from '@/app/_words/address';
import { bareMillimetres, millimetres } from '@/app/_words/numbers';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { demand, expectedScatter, getTrial, listPeople, weighPlan, type ExpectedScatter } from '@/lib/access';
import { trialNumber } from '../_parts/trial-number';
import { fieldsOfPlan, planFrom, startFields, type PlanFields } from './_parts/plan-fields';
import { PlanForm } from './_parts/plan-form';
import { Weighed } from './_parts/weighed';

export const generateMetadata = titled(() => words('trials')('plan.title'));

export default async function NewTrial({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  demand(viewer, 'run trials');
  const t = words('trials');
  const query = await searchParams;
  const sent = firstOf(query, 'asked') !== undefined;
  const [people, scatter, told] = await Promise.all([listPeople(viewer), expectedScatter(viewer), said()]);
  const working = people.filter(({ active }) => active);
  const fields = sent ? fieldsFrom(query) : await likeEarlier(query);
  const { plan, faults } = sent
    ? planFrom(
        fields,
        working.map(({ code }) => code),
        viewer.shop.defaultTolerance,
      )
    : { plan: null, faults: [] };
  const weighed = plan === null ? null : weighPlan(viewer, { ...plan, seed: 0, expected: scatter.expected });

  async function likeEarlier(asked: Query): Promise<PlanFields> {
    const id = trialNumber(firstOf(asked, 'like') ?? '');
    const earlier = id === null ? null : await getTrial(viewer, id);
    return earlier === null
      ? startFields()
      : { ...fieldsOfPlan(earlier.plan), name: t('plan.again', { name: earlier.name }) };
  }

  return (
    <Page above={<Link href="/trials">{t('all')}</Link>} title={t('plan.title')} lead={t('plan.lead')}>
      {told !== null && (
        <Note kind="fault" live>
          <p>{told}</p>
        </Note>
      )}
      {faults.length > 0 && (
        <Note kind="fault" live>
          <ul>
            {faults.map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        </Note>
      )}
      {plan !== null && weighed !== null && (
        <Weighed plan={plan} weighed={weighed} scatter={scatterWords(scatter)} />
      )}
      <Panel id="form" title={t('plan.form')}>
        <PlanForm fields={fields} people={working} tolerance={viewer.shop.defaultTolerance} />
      </Panel>
    </Page>
  );
}

function fieldsFrom(query: Query): PlanFields {
  return Object.fromEntries(
    Object.keys(query).flatMap((name) => {
      const value = firstOf(query, name);
      return value === undefined ? [] : [[name, value]];
    }),
  );
}

function scatterWords({ reading, setting, expected }: ExpectedScatter): string {
  const t = words('trials');
  const one = (part: 'reading' | 'setting', of: ExpectedScatter['reading']) => {
    const named = { name: t(`plan.scatterNames.${part}`), value: millimetres(expected[part], 2) };
    return of?.low == null || of.high == null
      ? t('plan.scatterUsual', named)
      : t('plan.scatterKnown', {
          ...named,
          low: bareMillimetres(of.low, 2),
          high: bareMillimetres(of.high, 2),
        });
  };
  return t('plan.scatter', { reading: one('reading', reading), setting: one('setting', setting) });
}

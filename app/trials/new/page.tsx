import type { Metadata } from 'next';
import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { firstOf, type Query } from '@/app/_words/address';
import { bareMillimetres } from '@/app/_words/numbers';
import { demand, expectedScatter, getTrial, listPeople, weighPlan, type ExpectedScatter } from '@/lib/access';
import { trialNumber } from '../_parts/trial-number';
import { fieldsOfPlan, planFrom, START, type PlanFields } from './_parts/plan-fields';
import { PlanForm } from './_parts/plan-form';
import { Weighed } from './_parts/weighed';

export const metadata: Metadata = { title: 'Plan a trial' };

export default async function NewTrial({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  demand(viewer, 'run trials');
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
    return earlier === null ? START : { ...fieldsOfPlan(earlier.plan), name: `${earlier.name}, again` };
  }

  return (
    <Page
      above={<Link href="/trials">All trials</Link>}
      title="Plan a trial"
      lead="Say what it is to find out and with whom. Before it is created you see how likely it is to find that."
    >
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
      <Panel id="form" title="The plan">
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
  const one = (name: string, of: ExpectedScatter['reading'], value: number) =>
    of?.low == null || of.high == null
      ? `${name} ${bareMillimetres(value, 2)} mm (common practice: this shop has no figure yet)`
      : `${name} ${bareMillimetres(value, 2)} mm (${bareMillimetres(of.low, 2)} to ${bareMillimetres(of.high, 2)})`;
  return `Worked out with the shop's own scatter: ${one('reading again', reading, expected.reading)}, ${one('setting', setting, expected.setting)}. Another hand or vehicle may scatter more.`;
}

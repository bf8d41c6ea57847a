import type { Metadata } from 'next';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { enter } from '@/app/_shop/enter';
import { firstOf, jobAddress, type Query } from '@/app/_words/address';
import { sectionInSentence } from '@/app/_words/jobs';
import { count } from '@/app/_words/numbers';
import { pageNumber } from '@/app/_words/page-number';
import { monthName } from '@/app/_words/times';
import { jobsBehind } from '../_parts/jobs-behind';
import { rateAddress, rateQuestion } from '../_parts/question';
import { filterWords, GROUPING_NAMES, groupName } from '../_parts/words';

export const metadata: Metadata = { title: 'Jobs behind a rate' };

const A_PAGE = 100;

export default async function JobsBehind({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const query = await searchParams;
  const { question } = rateQuestion(query);
  const { by } = question;
  const group = firstOf(query, 'group')?.slice(0, 100);
  const jobs = await jobsBehind(viewer, question, group);
  const page = pageNumber(query);
  const right = jobs.filter((job) => job.right).length;
  const title =
    group === undefined ? 'Jobs behind the rate' : `${GROUPING_NAMES[by]}: ${groupName(by, group)}`;
  return (
    <Page
      above={<Link href={rateAddress('/rates', question)}>Right first time</Link>}
      title={title}
      lead={`${right} of ${count(jobs.length, 'job')} right the first time; ${filterWords(question)}. Each job opens to its rounds and setups.`}
    >
      <Panel id="jobs" title={count(jobs.length, 'job')}>
        <Table
          caption="In the order of time"
          rows={jobs.slice((page - 1) * A_PAGE, page * A_PAGE)}
          rowKey={({ job }) => job}
          empty="No job fits all of this."
          columns={[
            {
              key: 'job',
              head: 'Job',
              names: true,
              cell: ({ job }) => (
                <Link href={jobAddress(job)} prefetch={false}>
                  {job}
                </Link>
              ),
            },
            {
              key: 'right',
              head: by === 'section' || question.section !== undefined ? 'This section' : 'Outcome',
              cell: ({ right: was }) => (
                <Tag name={was ? 'within' : 'out'}>{was ? 'Right first time' : 'Not right first time'}</Tag>
              ),
            },
            { key: 'technician', head: 'Technician', cell: ({ technician }) => technician },
            { key: 'sheet', head: 'Sheet', cell: ({ sheet }) => sheet ?? 'none named' },
            { key: 'month', head: 'Measured', whole: true, cell: ({ month }) => monthName(month) },
            { key: 'gauges', head: 'Gauges', cell: ({ gauges }) => gauges.join(', ') },
            {
              key: 'out',
              head: 'Out before',
              numeric: true,
              cell: ({ start }) => (start.measured ? start.out : 'not measured'),
            },
            {
              key: 'sections',
              head: 'Out after',
              cell: ({ sections }) =>
                sections.flatMap((one) => (one.right ? [] : [sectionInSentence(one.section)])).join(', ') ||
                'none',
            },
          ]}
        />
        <DownloadLinks of={title} csv={rateAddress('/rates/jobs/download', question, { group })} />
        <Pager
          page={page}
          pages={Math.max(1, Math.ceil(jobs.length / A_PAGE))}
          to={(number) => rateAddress('/rates/jobs', question, { group, page: number })}
        />
      </Panel>
    </Page>
  );
}

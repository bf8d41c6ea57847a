import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { Table } from '@/app/_look/table';
import { Tag } from '@/app/_look/tag';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { firstOf, jobAddress, type Query } from '@/app/_words/address';
import { sectionInSentence } from '@/app/_words/jobs';
import { pageNumber } from '@/app/_words/page-number';
import { monthName } from '@/app/_words/times';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { SECTIONS } from '@/lib/measure';
import { jobsBehind } from '../_parts/jobs-behind';
import { rateAddress, rateQuestion } from '../_parts/question';
import { filterWords, groupingName, groupName } from '../_parts/words';

export const generateMetadata = titled(() => words('rates')('jobs.title'));

const A_PAGE = 100;

export default async function JobsBehind({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const t = words('rates');
  const query = await searchParams;
  const { question } = rateQuestion(query);
  const { by } = question;
  const group = firstOf(query, 'group')?.slice(0, 100);
  const jobs = await jobsBehind(viewer, question, group);
  const page = pageNumber(query);
  const right = jobs.filter((job) => job.right).length;
  const title =
    group === undefined
      ? t('jobs.heading')
      : t('jobs.headingOf', { by: groupingName(by), group: groupName(by, group) });
  return (
    <Page
      above={<Link href={rateAddress('/rates', question)}>{t('title')}</Link>}
      title={title}
      lead={t('jobs.lead', { right, n: jobs.length, counted: filterWords(question) })}
    >
      <ExcludedNote viewer={viewer} />
      <Panel id="jobs" title={t('jobs.count', { n: jobs.length })}>
        <Table
          caption={t('jobs.caption')}
          rows={jobs.slice((page - 1) * A_PAGE, page * A_PAGE)}
          rowKey={({ job }) => job}
          empty={t('jobs.empty')}
          columns={[
            {
              key: 'job',
              head: t('jobs.job'),
              names: true,
              cell: ({ job }) => (
                <Link href={jobAddress(job)} prefetch={false}>
                  {job}
                </Link>
              ),
            },
            {
              key: 'right',
              head: t(by === 'section' || question.section !== undefined ? 'jobs.section' : 'jobs.outcome'),
              cell: ({ right: was }) => (
                <Tag name={was ? 'within' : 'out'}>{t(was ? 'jobs.right' : 'jobs.wrong')}</Tag>
              ),
            },
            { key: 'technician', head: t('jobs.technician'), cell: ({ technician }) => technician },
            { key: 'sheet', head: t('jobs.sheet'), cell: ({ sheet }) => sheet ?? t('jobs.noSheet') },
            { key: 'month', head: t('jobs.month'), whole: true, cell: ({ month }) => monthName(month) },
            { key: 'gauges', head: t('jobs.gauges'), cell: ({ gauges }) => gauges.join(', ') },
            {
              key: 'out',
              head: t('jobs.outBefore'),
              numeric: true,
              cell: ({ start }) => (start.measured ? start.out : t('jobs.notMeasured')),
            },
            {
              key: 'sections',
              head: t('jobs.outAfter'),
              cell: ({ sections }) =>
                SECTIONS.filter((section) => sections.some((one) => one.section === section && !one.right))
                  .map(sectionInSentence)
                  .join(', ') || t('none'),
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

import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { firstOf, type Query } from '@/app/_words/address';
import { pageNumber } from '@/app/_words/page-number';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import type { RateJob } from '@/lib/assess/rates';
import { frozen, onceFor } from '@/lib/memory';
import { jobsBehind } from '../_parts/jobs-behind';
import { JobsTable } from '../_parts/jobs-table';
import { rateAddress, rateQuestion } from '../_parts/question';
import { filterWords, groupingName, groupName } from '../_parts/words';

export const generateMetadata = titled(() => words('rates')('jobs.title'));

const A_PAGE = 100;

const pageOf = onceFor((jobs: readonly RateJob[], page: number) =>
  frozen(jobs.slice((page - 1) * A_PAGE, page * A_PAGE)),
);

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
        <JobsTable
          jobs={pageOf(jobs, page)}
          ofSections={by === 'section' || question.section !== undefined}
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

import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Empty } from '@/app/_look/empty';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { address, type Query } from '@/app/_words/address';
import { grouped } from '@/app/_words/numbers';
import { FilterForm } from '../_list/filter-form';
import { JobTable } from '../_list/job-table';
import { jobQuery, PAGE_SIZE, questionFrom, type Question } from '../_list/question';
import { countJobs, listJobs, listPeople, listSheets } from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { handsOf } from '@/app/_shop/hand-link';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('jobList')('title'));

export default async function Jobs({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const { question, notes } = questionFrom(await searchParams);
  const t = words('jobList');
  const { shop } = viewer;
  const [{ rows, total }, all, sheets, people] = await Promise.all([
    listJobs(viewer, jobQuery(question, shop.timeZone)),
    countJobs(viewer),
    listSheets(viewer),
    listPeople(viewer),
  ]);

  if (all === 0) {
    return (
      <Page title={t('title')}>
        <Empty
          title={t('none.title')}
          action={
            <Link className={button.strong} href="/load">
              {t('none.load')}
            </Link>
          }
        >
          <p>{t('none.text')}</p>
        </Empty>
      </Page>
    );
  }

  const pages = Math.max(1, Math.ceil(total / PAGE_SIZE));
  const page = question.page ?? 1;
  return (
    <Page
      title={t('title')}
      lead={total === all ? t('all', { n: all }) : t('some', { total, n: all })}
      actions={
        <a
          className={button.button}
          href={address('/jobs/download', { ...question, page: undefined })}
          download
        >
          {t('download', { n: total })}
        </a>
      }
    >
      <ExcludedNote viewer={viewer} filter={excludedWithin(question)} />
      <FilterForm
        question={question}
        sheets={sheets.map((sheet) => sheet.name)}
        technicians={people.filter((person) => person.role === 'technician').map((person) => person.code)}
      />
      {notes.length > 0 && (
        <Note kind="caution" live>
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </Note>
      )}
      {rows.length === 0 ? (
        <Note>
          <p>
            {total === 0 ? t('noneFits') : t('ends', { page: grouped(pages) })}{' '}
            {total > 0 && <Link href={address('/jobs', { ...question, page: pages })}>{t('toLast')}</Link>}
          </p>
        </Note>
      ) : (
        <JobTable
          rows={rows}
          question={question}
          timeZone={shop.timeZone}
          hands={handsOf(viewer)}
          caption={t('caption', {
            from: grouped((page - 1) * PAGE_SIZE + 1),
            to: grouped((page - 1) * PAGE_SIZE + rows.length),
            of: grouped(total),
          })}
        />
      )}
      <Pager page={page} pages={pages} to={(number) => address('/jobs', { ...question, page: number })} />
    </Page>
  );
}

/** The setups of the jobs that are listed, as far as the question names them. */
const excludedWithin = ({ technician, sheet, section }: Question) => ({
  ...(technician !== undefined && { technician }),
  ...(sheet !== undefined && { sheet }),
  ...(section !== undefined && { section }),
});

import type { Metadata } from 'next';
import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Empty } from '@/app/_look/empty';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Pager } from '@/app/_look/pager';
import { address, type Query } from '@/app/_words/address';
import { count, grouped } from '@/app/_words/numbers';
import { FilterForm } from '../_list/filter-form';
import { JobTable } from '../_list/job-table';
import { jobQuery, PAGE_SIZE, questionFrom } from '../_list/question';
import { countJobs, listJobs, listPeople, listSheets } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const metadata: Metadata = { title: 'Jobs' };

export default async function Jobs({ searchParams }: { searchParams: Promise<Query> }) {
  const { question, notes } = questionFrom(await searchParams);
  const viewer = await enter();
  const { shop } = viewer;
  const [{ rows, total }, all, sheets, people] = await Promise.all([
    listJobs(viewer, jobQuery(question, shop.timeZone)),
    countJobs(viewer),
    listSheets(viewer),
    listPeople(viewer),
  ]);

  if (all === 0) {
    return (
      <Page title="Jobs">
        <Empty
          title="No job has been measured yet"
          action={
            <Link className={button.strong} href="/load">
              Load a measurement file
            </Link>
          }
        >
          <p>Once a file is loaded, every job stands here with how far it has come and how it came out.</p>
        </Empty>
      </Page>
    );
  }

  const pages = Math.max(1, Math.ceil(total / PAGE_SIZE));
  const page = question.page ?? 1;
  return (
    <Page
      title="Jobs"
      lead={
        total === all
          ? `${count(all, 'job')}, the newest first unless you sort them otherwise.`
          : `${grouped(total)} of ${count(all, 'job')} fit what you asked for.`
      }
      actions={
        <a
          className={button.button}
          href={address('/jobs/download', { ...question, page: undefined })}
          download
        >
          Download the readings of {count(total, 'job')}
        </a>
      }
    >
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
            {total === 0
              ? 'No job fits all of this. Take a condition away, or show all.'
              : `The list ends at page ${pages}.`}{' '}
            {total > 0 && (
              <Link href={address('/jobs', { ...question, page: pages })}>Go to the last page</Link>
            )}
          </p>
        </Note>
      ) : (
        <JobTable
          rows={rows}
          question={question}
          timeZone={shop.timeZone}
          caption={`Jobs ${grouped((page - 1) * PAGE_SIZE + 1)} to ${grouped((page - 1) * PAGE_SIZE + rows.length)} of ${grouped(total)}. The column heads sort.`}
        />
      )}
      <Pager page={page} pages={pages} to={(number) => address('/jobs', { ...question, page: number })} />
    </Page>
  );
}

import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { count } from '@/app/_words/numbers';
import type { LoadedFile } from '../_staging/staged-file';

/** What loading a file came to. */
export function LoadResult({ result }: { result: LoadedFile }) {
  return (
    <>
      <Note live>
        {result.added === 0 ? (
          <p>
            {result.alreadyThere === 1
              ? 'The one reading was'
              : `All ${count(result.alreadyThere, 'reading')} were`}{' '}
            here already; the shop is as it was.
            {result.causes > 0 &&
              ` ${count(result.causes, 're-check outcome')} that the file states ${result.causes === 1 ? 'is' : 'are'} new and kept.`}
          </p>
        ) : (
          <>
            <p>
              {count(result.added, 'reading')} in {count(result.newSetups, 'new setup')} added, to{' '}
              {count(result.jobs, 'job')}, {result.newJobs} of them new.
              {result.alreadyThere > 0 && ` ${count(result.alreadyThere, 'reading')} were here already.`}
            </p>
            <p>
              New to the shop: {named('technician', result.newPeople)}; {named('gauge', result.newGauges)};{' '}
              {count(result.newSheets, 'sheet')}.
            </p>
            <p>The figures and verdicts are being worked out anew; the pages follow within a minute or so.</p>
          </>
        )}
      </Note>
      <p>
        <Link className={button.strong} href="/jobs">
          See the jobs
        </Link>
      </p>
    </>
  );
}

function named(what: string, labels: string[]): string {
  return labels.length === 0
    ? `no ${what}`
    : `${count(labels.length, what)} (${labels.slice(0, 20).join(', ')}${labels.length > 20 ? ', …' : ''})`;
}

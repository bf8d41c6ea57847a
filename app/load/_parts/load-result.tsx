import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Note } from '@/app/_look/note';
import { words } from '@/app/_words/words';
import type { LoadedFile } from '../_staging/staged-file';

/** What loading a file came to. */
export function LoadResult({ result }: { result: LoadedFile }) {
  const t = words('load');
  return (
    <>
      <Note live>
        {result.added === 0 ? (
          <p>
            {t('result.allThere', { n: result.alreadyThere })}
            {result.causes > 0 && ` ${t('result.causes', { n: result.causes })}`}
          </p>
        ) : (
          <>
            <p>
              {t('result.added', {
                added: result.added,
                newSetups: result.newSetups,
                jobs: result.jobs,
                newJobs: result.newJobs,
              })}
              {result.alreadyThere > 0 && ` ${t('result.someThere', { n: result.alreadyThere })}`}
            </p>
            <p>
              {t('result.new', {
                technicians: result.newPeople.length,
                technicianNames: named(result.newPeople),
                gauges: result.newGauges.length,
                gaugeNames: named(result.newGauges),
                sheets: result.newSheets,
              })}
            </p>
            <p>{t('result.refresh')}</p>
          </>
        )}
      </Note>
      <p>
        <Link className={button.strong} href="/jobs">
          {t('seeJobs')}
        </Link>
      </p>
    </>
  );
}

const SHOWN = 20;

const named = (labels: string[]): string =>
  labels.length > SHOWN ? `${labels.slice(0, SHOWN).join(', ')}, …` : labels.join(', ');

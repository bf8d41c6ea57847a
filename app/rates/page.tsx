import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import button from '@/app/_look/button.module.css';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import type { Query } from '@/app/_words/address';
import { percent } from '@/app/_words/numbers';
import { titled } from '@/app/_words/titled';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { everybodysFigures, riskAnswer } from '@/lib/access';
import type { RateGrouping } from '@/lib/assess/rates';
import { FilterForm } from './_parts/filter-form';
import { Funnel } from './_parts/funnel';
import { LetterForm } from './_parts/letter-form';
import { MeasuringError } from './_parts/measuring-error';
import { isFiltered, rateAddress, rateQuestion } from './_parts/question';
import { RateNotes, RateTable } from './_parts/rate-table';
import { allRateJobs, ratesFor } from './_parts/rates-for';
import { filterWords, groupingInSentence } from './_parts/words';

export const generateMetadata = titled(() => words('rates')('title'));

/** What is counted, where it is not jobs. */
const COUNTED: Partial<Record<RateGrouping, 'sections' | 'jobsOfGauges'>> = {
  section: 'sections',
  gauge: 'jobsOfGauges',
};

export default async function Rates({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const t = words('rates');
  const { question, notes } = rateQuestion(await searchParams);
  const [rates, jobs, risk, figures] = await Promise.all([
    ratesFor(viewer, question),
    allRateJobs(viewer),
    riskAnswer(viewer),
    everybodysFigures(viewer),
  ]);
  if (rates === null) return <FiguresPending title={t('title')} />;
  const { overall, groups, funnel, by } = rates;
  const outside = groups.filter(({ funnel: { place } }) => place !== null && place !== 'inside').length;
  const named = groupingInSentence(by);
  return (
    <Page
      title={t('title')}
      lead={t('lead')}
      actions={
        <>
          <Link className={button.button} href="/rates/signals">
            {t('signalsLink')}
          </Link>
          <Link className={button.button} href="/what-if">
            {t('whatIfLink')}
          </Link>
        </>
      }
    >
      <FiguresAge fit={figures} timeZone={viewer.shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <FilterForm question={question} jobs={jobs} />
      {notes.length > 0 && (
        <Note live>
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </Note>
      )}
      <FiguresRow
        figures={[
          {
            name: isFiltered(question)
              ? t('overall.nameOf', { counted: filterWords(question) })
              : t('overall.name'),
            value: overall.rate === null ? t('none') : percent(overall.rate),
            detail:
              overall.low === null || overall.high === null
                ? told(overall.why ?? '')
                : t(`overall.${COUNTED[by] ?? 'jobs'}`, {
                    low: percent(overall.low),
                    high: percent(overall.high),
                    right: overall.right,
                    n: overall.jobs,
                  }),
          },
          {
            name: t('outside.name'),
            value: t('outside.value', { outside, groups: groups.length }),
            detail: t('outside.detail', { by: named }),
          },
        ]}
      />
      <Panel id="rates" title={t('table.title', { by: named })} note={t('table.note')}>
        <RateTable rates={rates} question={question} />
        <DownloadLinks
          of={t('table.download', { by: named })}
          csv={rateAddress('/rates/download', question)}
        />
        <RateNotes rates={rates} />
      </Panel>
      {groups.length > 0 && funnel.target !== null && (
        <Panel id="funnel" title={t('funnel.title', { by: named })} note={t('funnel.note')}>
          <Funnel rates={rates} />
          <DownloadLinks
            of={t('funnel.download', { by: named })}
            picture={rateAddress('/rates/picture', question)}
          />
        </Panel>
      )}
      <Panel
        id="measuring-error"
        title={t('error.title')}
        note={isFiltered(question) ? t('error.noteOfAll') : t('error.note')}
      >
        {risk === null ? (
          <p>{t('error.pending')}</p>
        ) : (
          <MeasuringError risk={risk} shop={figures?.figures.shop ?? null} />
        )}
      </Panel>
      <LetterForm jobs={jobs} />
    </Page>
  );
}

import type { Metadata } from 'next';
import Link from 'next/link';
import { DownloadLinks } from '@/app/_figures/download/download-links';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
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
import { count, percent } from '@/app/_words/numbers';
import { everybodysFigures, riskAnswer } from '@/lib/access';
import { FilterForm } from './_parts/filter-form';
import { funnelDrawing } from './_parts/funnel-drawing';
import { LetterForm } from './_parts/letter-form';
import { MeasuringError } from './_parts/measuring-error';
import { isFiltered, rateAddress, rateQuestion } from './_parts/question';
import { RateNotes, RateTable } from './_parts/rate-table';
import { allRateJobs, ratesFor } from './_parts/rates-for';
import { filterWords, GROUPING_NAMES } from './_parts/words';

export const metadata: Metadata = { title: 'Right first time' };

export default async function Rates({ searchParams }: { searchParams: Promise<Query> }) {
  const viewer = await enter();
  const { question, notes } = rateQuestion(await searchParams);
  const [rates, jobs, risk, figures] = await Promise.all([
    ratesFor(viewer, question),
    allRateJobs(viewer),
    riskAnswer(viewer),
    everybodysFigures(viewer),
  ]);
  if (rates === null) return <FiguresPending title="Right first time" />;
  const { overall, groups, funnel, by } = rates;
  const outside = groups.filter(({ funnel: { place } }) => place !== null && place !== 'inside').length;
  const named = GROUPING_NAMES[by].toLowerCase();
  return (
    <Page
      title="Right first time"
      lead="How often a repair is right the first time, told so that a small group or one with hard jobs is not held against anybody, and what measuring error does to it."
      actions={
        <>
          <Link className={button.button} href="/rates/signals">
            Signals over time
          </Link>
          <Link className={button.button} href="/what-if">
            What if
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
            name: isFiltered(question) ? `Right, ${filterWords(question)}` : 'Right first time, all jobs',
            value: overall.rate === null ? 'none' : percent(overall.rate),
            detail:
              overall.low === null || overall.high === null
                ? overall.why
                : `95 % interval ${percent(overall.low)} to ${percent(overall.high)}, ${overall.right} of ${count(overall.jobs, by === 'section' ? 'section' : by === 'gauge' ? 'job of a gauge' : 'job', by === 'section' ? 'sections' : by === 'gauge' ? 'jobs of a gauge' : 'jobs')}`,
          },
          {
            name: 'Outside the funnel',
            value: `${outside} of ${groups.length}`,
            detail: `beyond the 95 % limits, by ${named}`,
          },
        ]}
      />
      <Panel
        id="rates"
        title={`By ${named}`}
        note="Each name opens to the jobs behind its figures. An interval that holds the rate of all says that the difference may be chance."
      >
        <RateTable rates={rates} question={question} />
        <DownloadLinks of={`rates by ${named}`} csv={rateAddress('/rates/download', question)} />
        <RateNotes rates={rates} />
      </Panel>
      {groups.length > 0 && funnel.target !== null && (
        <Panel
          id="funnel"
          title={`Funnel by ${named}`}
          note="A dot a group. The fewer jobs, the farther chance carries a rate: the dotted curves hold 95 of 100 groups that do not differ, the full ones 998 of 1000. The dashed line is the rate of all. Larger dots in another colour lie outside."
        >
          <StillDrawing drawing={funnelDrawing(rates)} />
          <DownloadLinks of={`funnel by ${named}`} picture={rateAddress('/rates/picture', question)} />
        </Panel>
      )}
      <Panel
        id="measuring-error"
        title="What measuring error does to the rate"
        note={
          isFiltered(question)
            ? 'Of all jobs of the shop, whatever is chosen above.'
            : 'A reading is never the dimension itself: some jobs are called right that are not, and the other way round.'
        }
      >
        {risk === null ? (
          <p>This is not worked out yet. Reload the page in a minute.</p>
        ) : (
          <MeasuringError risk={risk} shop={figures?.figures.shop ?? null} />
        )}
      </Panel>
      <LetterForm jobs={jobs} />
    </Page>
  );
}

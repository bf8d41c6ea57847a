import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import button from '@/app/_look/button.module.css';
import { FiguresRow } from '@/app/_look/figures-row';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter, viewerOrNull } from '@/app/_shop/enter';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { handsOf } from '@/app/_shop/hand-link';
import { FiguresAge } from '@/app/_shop/figures-age';
import { missCostOf } from '@/app/_shop/miss-cost';
import { address, technicianAddress, type Query } from '@/app/_words/address';
import { grouped } from '@/app/_words/numbers';
import { pageNumber } from '@/app/_words/page-number';
import { labelFrom } from '@/app/_words/parameters';
import { hear } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import type { HabitsAnswer } from '@/lib/assess/answers';
import { frozen, onceFor } from '@/lib/memory';
import {
  currentFigures,
  getPerson,
  habitsAnswer,
  listSetups,
  may,
  roundVerdicts,
  signalsOf,
} from '@/lib/access';
import { askedHand } from '../_parts/asked-hand';
import { BesideShop } from '../_parts/beside-shop';
import { heldTo, isAsked, timesOf } from '../_parts/hand-question';
import { LastRounds } from '../_parts/last-rounds';
import { heightsOfRounds } from '../_parts/heights-of-rounds';
import { Months } from '../_parts/months';
import { missetMonths } from '../_parts/misset-months';
import { ownRounds } from '../_parts/own-rounds';
import { Places } from '../_parts/places';
import { Practice } from '../_parts/practice';
import { Quarters } from '../_parts/quarters';
import { rateFigure } from '../_parts/rate-figure';
import { Setups } from '../_parts/setups';
import { SpanFigures } from '../_parts/span-figures';
import { SpanForm } from '../_parts/span-form';
import { Tolerance } from '../_parts/tolerance';

interface Props {
  params: Promise<{ code: string }>;
  searchParams: Promise<Query>;
}

const SETUPS_A_PAGE = 20;

const ROUNDS = 10;

const NONE: readonly never[] = Object.freeze([]);

const habitsOf = onceFor((habits: HabitsAnswer, code: string): HabitsAnswer =>
  frozen(habits.filter(({ technician }) => technician === code)),
);

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const code = labelFrom((await params).code);
  await hear();
  const t = words('hand');
  return { title: (await viewerOrNull())?.code === code ? t('myHand') : t('technician', { code }) };
}

export default async function TechnicianPage({ params, searchParams }: Props) {
  const code = labelFrom((await params).code);
  const query = await searchParams;
  const page = pageNumber(query);
  const viewer = await enter();
  const t = words('hand');
  const { shop } = viewer;
  const asked = await askedHand(viewer, code, query);
  const { question, notes, choices, hand, span } = asked;
  const { sheet, section, ...held } = heldTo(question, choices);
  const within = { technician: code, gauge: question.gauge, ...timesOf(held, shop.timeZone) };
  const [person, figures, habits, changes, rounds, setups] = await Promise.all([
    getPerson(viewer, code),
    currentFigures(viewer),
    habitsAnswer(viewer),
    signalsOf(viewer, 'technician', code),
    roundVerdicts(viewer, { ...within, limit: ROUNDS }),
    listSetups(viewer, { ...within, sheet, section, page, pageSize: SETUPS_A_PAGE }),
  ]);
  if (person === null) notFound();
  const heights = await heightsOfRounds(viewer, code, rounds);
  const here = technicianAddress(code);
  const isHeld = isAsked(question);
  const placed = isHeld ? span : hand;
  const picture = (of: string) => address(`${here}/picture`, { ...question, of });
  const own = figures?.figures.technicians.find((one) => one.technician === code) ?? null;
  const months = missetMonths(hand?.missets ?? NONE, { from: held.from, to: held.to, gauge: question.gauge });
  const name = person.name === '' || person.name === code ? code : `${person.name}, ${code}`;
  return (
    <Page
      above={may(viewer, 'see everybody’s figures') && <Link href="/technicians">{t('all')}</Link>}
      title={viewer.code === code ? t('myHandOf', { name }) : name}
      lead={t('lead')}
      actions={
        <>
          <Link className={button.button} href={address('/jobs', { technician: code })}>
            {t('jobsBy', { code })}
          </Link>
          <a className={button.button} href={`${here}/sheet`} download>
            {words('talk')('link')}
          </a>
          <a className={button.button} href={address(`${here}/download`, { ...question })}>
            {t('download')}
          </a>
        </>
      }
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} filter={{ technician: code }} />
      <Practice
        hand={hand}
        habits={habits === null ? NONE : habitsOf(habits, code)}
        changes={changes}
        charts={may(viewer, 'see everybody’s figures')}
      />
      {own === null || figures === null ? (
        <Note>
          <p>{t('notYet', { code })}</p>
        </Note>
      ) : (
        <>
          <FiguresRow
            figures={[
              { name: t('figures.jobs'), value: grouped(own.jobs) },
              { name: t('figures.setups'), value: grouped(own.setups) },
              { name: t('figures.readings'), value: grouped(own.readings) },
              rateFigure(own.firstTimeRight),
            ]}
          />
          <BesideShop own={own} band={figures.figures.shop} picture={picture('beside')} />
        </>
      )}
      {hand !== null && <Tolerance hand={hand} picture={picture('tolerance')} />}
      <Panel id="span" title={t('span.title')} note={t('span.note')}>
        {notes.map((note) => (
          <Note key={note}>
            <p>{note}</p>
          </Note>
        ))}
        <SpanForm
          to={here}
          question={question}
          choices={choices}
          gauges={hand?.places.gauge.map((place) => place.name) ?? []}
        />
        {span !== null && <SpanFigures span={span} picture={picture('asked')} />}
        {isHeld && span === null && hand !== null && <p>{t('span.nothing', { code })}</p>}
      </Panel>
      {placed !== null && <Places places={placed.places} here={here} question={question} />}
      <LastRounds rounds={ownRounds(rounds, code, heights, missCostOf(shop))} timeZone={shop.timeZone} />
      {hand !== null && (
        <Quarters quarters={placed?.quarters ?? []} held={isHeld} here={here} question={question} />
      )}
      {months.length > 1 && <Months months={months} />}
      <Setups
        setups={setups.rows}
        total={setups.total}
        page={page}
        pages={Math.max(1, Math.ceil(setups.total / SETUPS_A_PAGE))}
        code={code}
        here={here}
        question={question}
        timeZone={shop.timeZone}
        hands={handsOf(viewer)}
      />
    </Page>
  );
}

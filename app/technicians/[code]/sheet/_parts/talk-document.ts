import type { Block, PrintedDocument } from '@/app/_record';
import { placeSaid, roundSaid } from '@/app/_record/trade';
import { cautions } from '@/app/_words/cautions';
import { chance, effectWords } from '@/app/_words/habits';
import { grouped, probability, signed, signedMillimetres, unit } from '@/app/_words/numbers';
import { causeProved } from '@/app/_words/proved';
import { localeOf, speech } from '@/app/_words/speech';
import { dayAndTime } from '@/app/_words/times';
import { told } from '@/app/_words/told';
import { callInSentence, callName, CALLS, callSentence } from '@/app/_words/verdicts';
import { words } from '@/app/_words/words';
import type { OwnHeight, OwnRound } from '@/app/technicians/_parts/own-rounds';
import type { SetupRow } from '@/lib/access';
import { HABIT_TEXTS, type HabitCell } from '@/lib/assess/habits';
import { figureBlocks } from './figure-blocks';
import type { TalkSheet } from './gather';

/** Rows to be filled in by hand with what was agreed. */
const STEPS = 4;

/** The sheet that lies on the table in a training talk. */
export function talkDocument(sheet: TalkSheet): PrintedDocument {
  const t = words('talk');
  const print = words('print');
  const { person, shop, printed, fit, hand } = sheet;
  const { code, name } = person;
  const when = dayAndTime(printed.at, shop.timeZone);
  const [verdict] = cautions();
  return {
    title: t('title', { who: name === '' || name === code ? code : `${name}, ${code}` }),
    above: shop.name,
    language: localeOf(speech()),
    at: printed.at,
    foot: t('foot', { printed: print('printed', { when, who: printed.by }), zone: shop.timeZone }),
    pageOf: (page, pages) => print('pageOf', { page, pages }),
    blocks: [
      { kind: 'paragraph', text: t('lead') },
      { kind: 'facts', facts: factsOf(sheet) },
      ...(fit?.stale === true ? [{ kind: 'paragraph', text: t('stale') } as const] : []),
      ...figureBlocks(sheet),
      { kind: 'heading', level: 2, text: t('practice.title') },
      {
        kind: 'paragraph',
        text: hand === null ? t('practice.none') : told(hand.practice.sentence),
      },
      ...(hand === null ? [] : [{ kind: 'paragraph', text: told(hand.toAThird.sentence) } as const]),
      ...changeBlocks(sheet),
      ...habitBlocks(sheet),
      ...roundBlocks(sheet),
      { kind: 'heading', level: 2, text: t('steps.title') },
      {
        kind: 'table',
        caption: t('steps.caption'),
        columns: [
          { head: t('steps.what'), width: 46 },
          { head: t('steps.until'), width: 20 },
          { head: t('steps.how'), width: 34 },
        ],
        rows: Array.from({ length: STEPS }, () => ({ cells: ['', '', ''], tall: true })),
      },
      ...(verdict === undefined
        ? []
        : [{ kind: 'caution', title: `${verdict.title}.`, text: verdict.text } as const]),
      {
        kind: 'signing',
        title: t('signing.title'),
        text: t('signing.text'),
        names: [t('signing.technician'), t('signing.trainer')],
      },
    ],
  };
}

function factsOf({ own, fit, shop }: TalkSheet) {
  const t = words('talk');
  return [
    ...(own === null
      ? []
      : [
          {
            name: t('facts.restsOn'),
            value: t('facts.counts', {
              jobs: own.jobs,
              setups: own.setups,
              readings: own.readings,
              many: grouped(own.readings),
            }),
          },
        ]),
    {
      name: t('facts.figures'),
      value: fit === null ? t('facts.none') : dayAndTime(fit.fittedAt, shop.timeZone),
    },
  ];
}

/** What changed beyond chance and the step to take; nothing where nothing did. */
function changeBlocks({ changes }: TalkSheet): Block[] {
  if (changes.length === 0) return [];
  const t = words('talk');
  return [
    { kind: 'heading', level: 2, text: words('overview')('attention.changes') },
    ...changes.flatMap(({ evidence, next }): Block[] => [
      { kind: 'paragraph', text: told(evidence) },
      { kind: 'paragraph', lead: t('changes.next'), text: told(next) },
    ]),
  ];
}

/** Each habit found with its evidence, the setups that show it, and how it is trained. */
function habitBlocks({ habits, shownBy, shop }: TalkSheet): Block[] {
  const t = words('talk');
  const found = habits.filter(({ state }) => state === 'found');
  const few = habits.filter(({ state }) => state === 'too few readings').length;
  return [
    { kind: 'heading', level: 2, text: t('habits.title') },
    {
      kind: 'paragraph',
      text:
        habits.length === 0
          ? t('habits.notLooked')
          : found.length > 0
            ? t('habits.found', { found: found.length, habits: habits.length })
            : t(few === 0 ? 'habits.none' : 'habits.noneYet', { habits: habits.length, few }),
    },
    ...found.flatMap((cell): Block[] => [
      { kind: 'heading', level: 3, text: told(HABIT_TEXTS[cell.habit].name) },
      { kind: 'paragraph', text: evidenceOf(cell) },
      { kind: 'paragraph', lead: t('habits.train'), text: told(HABIT_TEXTS[cell.habit].train) },
      { kind: 'paragraph', lead: t('habits.lookalikes'), text: told(HABIT_TEXTS[cell.habit].lookalikes) },
      setupTable(shownBy.get(cell.habit) ?? [], shop.timeZone),
    ]),
  ];
}

function evidenceOf({ evidence, effect, adjustedP }: HabitCell): string {
  const t = words('talk');
  return [
    told(evidence),
    ...(effect === null ? [] : [t('habits.effect', { effect: effectWords(effect) })]),
    ...(adjustedP === null ? [] : [t('habits.p', { p: chance(adjustedP) })]),
  ].join(' ');
}

const setupTable = (setups: readonly SetupRow[], timeZone: string): Block => {
  const t = words('talk');
  return {
    kind: 'table',
    caption: t('setups.caption', { unit: unit() }),
    empty: t('setups.none'),
    columns: [
      { head: t('setups.setup'), width: 20 },
      { head: t('setups.round'), width: 22 },
      { head: t('setups.when'), width: 24 },
      { head: t('setups.gauge'), width: 12 },
      { head: t('setups.read'), width: 46 },
    ],
    rows: setups.map((one) => ({
      cells: [
        `${one.job} ${one.setup}`,
        roundSaid(one),
        dayAndTime(one.hungAt, timeZone),
        one.gauge,
        one.observations.length === 0
          ? t('setups.excluded')
          : one.observations.map((seen) => `${placeSaid(seen)} ${signed(seen.deviation, 2)}`).join('; '),
      ],
    })),
  };
};

/** The last rounds: of the heights that this hand hung, what was gauge and what was body. */
function roundBlocks({ rounds, shop: { timeZone } }: TalkSheet): Block[] {
  const t = words('talk');
  const called = new Set(rounds.flatMap(({ doubtful }) => doubtful.map(({ call }) => call)));
  return [
    { kind: 'heading', level: 2, text: t('rounds.title') },
    { kind: 'paragraph', aside: true, text: t('rounds.note') },
    {
      kind: 'table',
      caption: t('rounds.caption'),
      empty: t('rounds.none'),
      columns: [
        { head: t('rounds.round'), width: 28 },
        { head: t('rounds.when'), width: 24 },
        { head: t('rounds.heights'), width: 12, numeric: true },
        { head: t('rounds.doubtful'), width: 70 },
      ],
      rows: rounds.map((round) => ({
        cells: [
          `${round.job}, ${roundSaid(round)}`,
          dayAndTime(round.at, timeZone),
          String(round.heights),
          doubtfulSaid(round),
        ],
      })),
    },
    {
      kind: 'list',
      items: CALLS.filter((call) => called.has(call)).map((call) => ({
        lead: `${callName(call)}:`,
        text: callSentence(call),
      })),
    },
  ];
}

function doubtfulSaid({ heights, doubtful, why }: OwnRound): string {
  const t = words('talk');
  if (heights === 0) return t('rounds.noHeight');
  // Where the center section does not carry the datum no height is decided.
  if (why !== null) return told(why);
  return doubtful.length === 0 ? t('rounds.neither') : doubtful.map(heightSaid).join('\n');
}

function heightSaid({ setup, point, side, deviation, call, p, proved }: OwnHeight): string {
  const t = words('talk');
  const said = t('rounds.height', {
    setup,
    place: placeSaid({ point, side }),
    call: callInSentence(call),
    deviation: signedMillimetres(deviation),
    gauge: probability(p.gauge + p.both),
    body: probability(p.body + p.both),
  });
  return proved === null ? said : `${said} ${t('rounds.proved', { cause: causeProved(proved) })}`;
}

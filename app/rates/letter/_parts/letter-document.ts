import { gaugeConcern, openHeights, type JudgedRound } from '@/app/_overview/attention';
import type { Block, ListItem, PrintedDocument } from '@/app/_record';
import { roundSaid } from '@/app/_record/trade';
import { pWords } from '@/app/rates/_parts/words';
import { cautions } from '@/app/_words/cautions';
import { effectWords } from '@/app/_words/habits';
import { localeOf, speech } from '@/app/_words/speech';
import { day, dayAndTime, monthName } from '@/app/_words/times';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { HABIT_TEXTS } from '@/lib/assess/habits';
import type { MonthLetter } from './gather';
import { monthBlocks } from './month-blocks';
import { riskBlocks } from './risk-blocks';

/** More lines than these are told as a count: a letter of two pages is read to its end. */
const AT_MOST = { signals: 4, rounds: 4, technicians: 4, gauges: 6, habits: 6 };

/** The month in a letter of one or two pages: what happened, how sure it is, and what to do next. */
export function letterDocument(letter: MonthLetter): PrintedDocument {
  const t = words('letter');
  const print = words('print');
  const { shop, month, printed, fit, excluded } = letter;
  const when = dayAndTime(printed.at, shop.timeZone);
  const [verdict] = cautions();
  return {
    title: t('title', { month: monthName(month) }),
    above: shop.name,
    language: localeOf(speech()),
    at: printed.at,
    foot: t('foot', {
      month: monthName(month),
      zone: shop.timeZone,
      printed: print('printed', { when, who: printed.by }),
    }),
    pageOf: (page, pages) => print('pageOf', { page, pages }),
    blocks: [
      ...monthBlocks(letter),
      ...riskBlocks(letter),
      ...signalBlocks(letter),
      ...attentionBlocks(letter),
      ...gaugeBlocks(letter),
      ...habitBlocks(letter),
      {
        kind: 'paragraph',
        aside: true,
        text: [
          fit === null
            ? t('noFigures')
            : t(fit.stale ? 'stale' : 'figures', { when: dayAndTime(fit.fittedAt, shop.timeZone) }),
          t('excluded', { n: excluded }),
        ].join(' '),
      },
      ...(verdict === undefined
        ? []
        : [{ kind: 'caution', title: `${verdict.title}.`, text: verdict.text } as const]),
    ],
  };
}

/** Changes beyond chance that were noticed by then. */
function signalBlocks({ signals, month }: MonthLetter): Block[] {
  const t = words('letter');
  const heading = { kind: 'heading', level: 2, text: t('signals.title') } as const;
  if (signals === null) return [heading, { kind: 'paragraph', text: t('notYet') }];
  const noticed = signals.signals.filter((one) => one.noticed <= month);
  const later = signals.signals.length - noticed.length;
  const rest = noticed.length - AT_MOST.signals;
  return [
    heading,
    ...(noticed.length === 0
      ? [
          {
            kind: 'paragraph',
            text: signals.quiet === null ? t('signals.none') : told(signals.quiet),
          } as const,
        ]
      : [
          {
            kind: 'list',
            items: noticed.slice(0, AT_MOST.signals).map(({ direction, evidence, next, p }): ListItem => ({
              lead: t(`signals.${direction}`),
              text: [
                told(evidence),
                ...(p === null ? [] : [t('signals.p', { p: pWords(p) })]),
                t('next', { what: told(next) }),
              ].join(' '),
            })),
          } as const,
        ]),
    {
      kind: 'paragraph',
      aside: true,
      text: [
        ...(rest > 0 ? [t('signals.rest', { n: rest })] : []),
        t('signals.rests', { months: signals.design.falseAlarmPeriods }),
        ...(later === 0 ? [] : [t('signals.later', { n: later })]),
      ].join(' '),
    },
  ];
}

/** What a re-check would settle, and whose figures lie apart: as of the newest reading, whichever month is told. */
function attentionBlocks({ attention, departures, newest, missCost, shop }: MonthLetter): Block[] {
  const t = words('letter');
  const { open, undecidable } = attention;
  const items = [
    ...roundItems(open, shop.timeZone, (round) => ({
      note: t('attention.open', { n: openHeights(round, missCost).length }),
      words: round.nextChecks[0]?.words ?? '',
    })),
    ...roundItems(undecidable, shop.timeZone, (round) => ({
      note: t('attention.undecidable'),
      words: round.why ?? '',
    })),
    ...departures.slice(0, AT_MOST.technicians).map(({ technician, words: of }): ListItem => ({
      lead: `${technician}:`,
      text: `${told(of)} ${t('next', { what: t('attention.talk') })}`,
    })),
  ];
  const beyond = (list: readonly unknown[], most: number) => Math.max(0, list.length - most);
  const rest = beyond(open, AT_MOST.rounds) + beyond(undecidable, AT_MOST.rounds);
  const others = beyond(departures, AT_MOST.technicians);
  return [
    { kind: 'heading', level: 2, text: t('attention.title') },
    items.length === 0 ? { kind: 'paragraph', text: t('attention.none') } : { kind: 'list', items },
    {
      kind: 'paragraph',
      aside: true,
      text: [
        ...(rest === 0 ? [] : [t('attention.rest', { n: rest })]),
        ...(others === 0 ? [] : [t('attention.others', { n: others })]),
        t('attention.rests', { when: day(newest, shop.timeZone) }),
      ].join(' '),
    },
  ];
}

const roundItems = (
  rounds: readonly JudgedRound[],
  timeZone: string,
  say: (round: JudgedRound) => { note: string; words: string },
): ListItem[] =>
  rounds.slice(0, AT_MOST.rounds).map((round) => {
    const { note, words: of } = say(round);
    return {
      lead: `${round.job},`,
      text: `${roundSaid(round)}, ${day(round.at, timeZone)}, ${note}: ${told(of)}`,
    };
  });

function gaugeBlocks({ attention, newest, shop: { timeZone } }: MonthLetter): Block[] {
  const t = words('letter');
  const concerns = attention.gauges.map((gauge) => ({
    gauge,
    concern: gaugeConcern(gauge, newest) ?? ('out of service' as const),
  }));
  // A gauge that is in use unverified spoils readings today; one out of service hangs nowhere.
  const first = [...concerns].sort(
    (a, b) => Number(a.concern === 'out of service') - Number(b.concern === 'out of service'),
  );
  const rest = first.length - AT_MOST.gauges;
  return [
    { kind: 'heading', level: 2, text: t('gauges.title') },
    {
      kind: 'table',
      caption: t('gauges.caption', { when: day(newest, timeZone) }),
      empty: t('gauges.none', { when: day(newest, timeZone) }),
      columns: [
        { head: t('gauges.gauge'), width: 18 },
        { head: t('gauges.why'), width: 40 },
        { head: t('gauges.verified'), width: 30 },
        { head: t('gauges.next'), width: 60 },
      ],
      rows: first.slice(0, AT_MOST.gauges).map(({ gauge, concern }) => {
        const key = CONCERNS[concern];
        return {
          cells: [
            gauge.tag,
            t(`gauges.${key}`),
            gauge.verifiedAt === null ? t('gauges.notVerified') : day(gauge.verifiedAt, timeZone),
            t(`gauges.nextOf.${key}`),
          ],
        };
      }),
    },
    ...(rest > 0 ? [{ kind: 'paragraph', aside: true, text: t('gauges.rest', { n: rest }) } as const] : []),
  ];
}

const CONCERNS = {
  'out of service': 'out',
  'verification overdue': 'overdue',
  'never verified': 'never',
} as const;

function habitBlocks({ habits }: MonthLetter): Block[] {
  const t = words('letter');
  const rest = habits.length - AT_MOST.habits;
  return [
    { kind: 'heading', level: 2, text: t('habits.title') },
    habits.length === 0
      ? { kind: 'paragraph', text: t('habits.none') }
      : {
          kind: 'list',
          items: habits.slice(0, AT_MOST.habits).map(({ technician, habit, effect }) => ({
            lead: `${technician}:`,
            text: `${told(HABIT_TEXTS[habit].name)}. ${effect === null ? '' : `${effectWords(effect)}.`}`,
          })),
        },
    ...(habits.length === 0 ? [] : [{ kind: 'paragraph', text: t('habits.next') } as const]),
    {
      kind: 'paragraph',
      aside: true,
      text: [...(rest > 0 ? [t('habits.rest', { n: rest })] : []), t('habits.rests')].join(' '),
    },
  ];
}

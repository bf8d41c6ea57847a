import { roundSaid } from '@/app/_record/trade';
import { cautions } from '@/app/_words/cautions';
import { kindName } from '@/app/_words/gauges';
import { outcomeName } from '@/app/_words/jobs';
import type { Block, PrintedDocument } from '@/app/_record';
import { localeOf, speech } from '@/app/_words/speech';
import { dayAndTime } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import { comparedBlocks } from './compared-blocks';
import type { JobRecord } from './gather';
import { excludedIn, recheckBlocks, revisionBlocks } from './history-blocks';
import { pictureBlocks } from './picture-blocks';
import { roundBlocks } from './round-blocks';
import { unknownBlocks } from './unknown-blocks';

/** The record of a job as it is printed: what was read before and after, what stands behind it, and what is open. */
export function recordDocument(record: JobRecord): PrintedDocument {
  const t = words('record');
  const print = words('print');
  const { row, shop, rounds, printed } = record;
  const when = dayAndTime(printed.at, shop.timeZone);
  const [verdict, rehang] = cautions();
  return {
    title: t('title', { job: row.job }),
    above: shop.name,
    language: localeOf(speech()),
    at: printed.at,
    foot: t('foot', {
      job: row.job,
      zone: shop.timeZone,
      printed: print('printed', { when, who: printed.by }),
    }),
    pageOf: (page, pages) => print('pageOf', { page, pages }),
    blocks: [
      { kind: 'facts', facts: factsOf(record) },
      ...[verdict, rehang].flatMap((one): Block[] =>
        one === undefined ? [] : [{ kind: 'caution', title: `${one.title}.`, text: one.text }],
      ),
      ...unknownBlocks(record),
      ...comparedBlocks(record),
      ...pictureBlocks(record),
      ...rounds.flatMap((one, index) => roundBlocks(record, one, index === rounds.length - 1)),
      ...recheckBlocks(record),
      ...revisionBlocks(record),
      { kind: 'heading', level: 2, text: print('cautions') },
      {
        kind: 'list',
        items: cautions().map(({ title, text }) => ({ lead: `${title}.`, text })),
      },
      {
        kind: 'signing',
        title: t('judgement.title'),
        text: t('judgement.text'),
        names: (['name', 'licence', 'place', 'signature'] as const).map((line) => t(`judgement.${line}`)),
      },
    ],
  };
}

function factsOf({ row, rounds, fit, revisions, shop: { timeZone } }: JobRecord) {
  const t = words('record');
  const setups = rounds.flatMap(({ round }) => round.setups);
  const times = rounds.flatMap(({ readings }) => readings.map(({ takenAt }) => takenAt));
  const readings = rounds.reduce((sum, one) => sum + one.readings.length, 0);
  const distinct = (names: readonly string[]) => [...new Set(names)].join(', ');
  return [
    { name: t('facts.job'), value: row.job },
    { name: t('facts.sheet'), value: row.sheet ?? words('print')('notNamed') },
    { name: t('facts.outcome'), value: outcomeName(row.outcome) },
    { name: t('facts.rounds'), value: rounds.map(({ round }) => roundSaid(round)).join('; ') },
    ...(times.length === 0
      ? []
      : [
          {
            name: t('facts.measured'),
            value: `${dayAndTime(Math.min(...times), timeZone)}; ${dayAndTime(Math.max(...times), timeZone)}`,
          },
        ]),
    { name: t('facts.technicians'), value: distinct(setups.map(({ technician }) => technician)) },
    {
      name: t('facts.gauges'),
      value: distinct(setups.map(({ gauge, gaugeKind }) => `${gauge} (${kindName(gaugeKind)})`)),
    },
    {
      name: t('facts.readings'),
      value: t('facts.readingsCount', { readings, excluded: excludedIn(revisions) }),
    },
    {
      name: t('facts.figures'),
      value:
        fit === null
          ? t('facts.figuresNone')
          : t(fit.stale ? 'facts.figuresStale' : 'facts.figuresOf', {
              when: dayAndTime(fit.fittedAt, timeZone),
            }),
    },
  ];
}

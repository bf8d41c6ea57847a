import { likeliestWrong } from '@/app/rates/_parts/likeliest-wrong';
import type { Block } from '@/app/_record';
import { percent, probability } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import type { MonthLetter } from './gather';
import { expectedSaid } from './month-blocks';

/** The month's jobs that are likeliest to be called wrongly. */
const SHOWN = 5;

/** What measuring error does to the rate: of all jobs, and which of the month it matters to most. */
export function riskBlocks({ risk, jobs }: MonthLetter): Block[] {
  const t = words('letter');
  const heading = { kind: 'heading', level: 2, text: t('risk.title') } as const;
  if (risk === null) return [heading, { kind: 'paragraph', text: t('notYet') }];
  const { trueRate, calledRate, wronglyRight, wronglyNotRight, workedOnAgain } = risk;
  const ofMonth = new Set(jobs.map(({ job }) => job));
  const doubtful = likeliestWrong(
    risk.jobs.filter(({ job }) => ofMonth.has(job)),
    SHOWN,
  );
  return [
    heading,
    { kind: 'paragraph', text: told(risk.sentence) },
    {
      kind: 'table',
      caption: t('risk.caption', { n: wronglyRight.of + wronglyNotRight.of }),
      columns: [
        { head: t('risk.what'), width: 70 },
        { head: t('risk.expected'), width: 40, numeric: true },
        { head: t('risk.of'), width: 30, numeric: true },
      ],
      rows: [
        {
          cells: [t('risk.wronglyRight'), expectedSaid(wronglyRight), String(wronglyRight.of)],
        },
        {
          cells: [t('risk.wronglyNotRight'), expectedSaid(wronglyNotRight), String(wronglyNotRight.of)],
        },
        { cells: [t('risk.again'), expectedSaid(workedOnAgain), String(workedOnAgain.of)] },
        {
          cells: [
            t('risk.trueRate', {
              called: calledRate === null ? words('print')('none') : percent(calledRate),
            }),
            trueRate.expected === null || trueRate.low === null || trueRate.high === null
              ? words('print')('none')
              : words('print')('withInterval', {
                  value: percent(trueRate.expected),
                  low: percent(trueRate.low),
                  high: percent(trueRate.high),
                }),
            '',
          ],
        },
      ],
    },
    ...(doubtful.length === 0
      ? []
      : [
          {
            kind: 'paragraph',
            lead: t('risk.doubtful'),
            text: doubtful
              .map(({ job, calledRight, trulyRight }) =>
                t(calledRight ? 'risk.calledRight' : 'risk.calledNot', { job, p: probability(trulyRight) }),
              )
              .join('; '),
          } as const,
        ]),
    { kind: 'paragraph', aside: true, text: t('risk.rests') },
  ];
}

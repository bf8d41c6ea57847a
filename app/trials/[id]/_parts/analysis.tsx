import { EstimateTable } from '@/app/_figures/estimate-table';
import { FiguresRow } from '@/app/_look/figures-row';
import { Panel } from '@/app/_look/panel';
import prose from '@/app/_look/prose.module.css';
import { briefMillimetres, decimal, percent } from '@/app/_words/numbers';
import { told } from '@/app/_words/told';
import { whyTold } from '@/app/_words/why';
import { words } from '@/app/_words/words';
import { analysisOf, toleranceOf, type TrialView, type Viewer } from '@/lib/access';
import { trialAddress } from '@/app/trials/_parts/words';
import { trialDrawing } from './hanging-drawing';
import { Hangings } from './hangings';
import { PeopleFigures } from './people-figures';
import { sourcesOf } from './sources';
import { TwoWays } from './two-ways';

/** What a trial shows: in sentences first, then each figure with its limits. */
export function Analysis({ viewer, trial }: { viewer: Viewer; trial: TrialView }) {
  const t = words('trials');
  const { analysis, why } = analysisOf(viewer, trial);
  if (analysis === null)
    return (
      <Panel id="analysis" title={t('analysis.title')}>
        <p>{told(why)}</p>
      </Panel>
    );
  const tolerance = toleranceOf(trial.plan);
  const complete = { n: analysis.hangings, planned: trial.runs.length };
  const mixed = trial.plan.points.some((point) => point.tolerance !== tolerance);
  const { shareOfTolerance: share, distinctCategories: categories } = analysis;
  return (
    <>
      <Panel
        id="analysis"
        title={t('analysis.title')}
        note={
          mixed
            ? t('analysis.noteMixed', { ...complete, tolerance: briefMillimetres(tolerance) })
            : t('analysis.note', complete)
        }
      >
        <div className={prose.prose}>
          <ul>
            {analysis.sentences.map((sentence) => (
              <li key={sentence}>{told(sentence)}</li>
            ))}
          </ul>
        </div>
        <FiguresRow
          figures={[
            {
              name: t('analysis.share', { tolerance: briefMillimetres(tolerance) }),
              value: share.value === null ? t('none') : percent(share.value),
              detail:
                share.low === null || share.high === null
                  ? (whyTold(share.why) ?? t('analysis.noInterval'))
                  : t('analysis.interval', { low: percent(share.low), high: percent(share.high) }),
            },
            {
              name: t('analysis.groups'),
              value: categories?.count ?? t('none'),
              detail:
                categories?.raw == null
                  ? t('analysis.groupsNone')
                  : t('analysis.groupsFrom', { raw: decimal(categories.raw, 2) }),
            },
          ]}
        />
        <Hangings
          drawing={trialDrawing(trial)}
          csv={`${trialAddress(trial.id)}/figures`}
          picture={`${trialAddress(trial.id)}/picture`}
        />
      </Panel>
      <Panel id="sources" title={t('sources.title')} note={t('sources.note')}>
        <EstimateTable
          caption={t('sources.caption')}
          head={t('source')}
          kind="sd"
          estimates={sourcesOf(analysis)}
        />
      </Panel>
      <Panel id="people" title={t('people.title')} note={t('people.note')}>
        <PeopleFigures people={analysis.people} />
      </Panel>
      <Panel id="two-ways" title={t('ways.title')} note={t('ways.note')}>
        <TwoWays crossed={analysis.crossed} />
      </Panel>
    </>
  );
}

import { EstimateTable } from '@/app/_figures/estimate-table';
import { FiguresRow } from '@/app/_look/figures-row';
import { Panel } from '@/app/_look/panel';
import prose from '@/app/_look/prose.module.css';
import { percent } from '@/app/_words/numbers';
import { analysisOf, toleranceOf, type TrialView, type Viewer } from '@/lib/access';
import { trialAddress } from '@/app/trials/_parts/words';
import { trialDrawing } from './hanging-drawing';
import { Hangings } from './hangings';
import { PeopleFigures } from './people-figures';
import { sourcesOf } from './sources';
import { TwoWays } from './two-ways';

/** What a trial shows: in sentences first, then each figure with its limits. */
export function Analysis({ viewer, trial }: { viewer: Viewer; trial: TrialView }) {
  const { analysis, why } = analysisOf(viewer, trial);
  if (analysis === null)
    return (
      <Panel id="analysis" title="What it shows">
        <p>{why}</p>
      </Panel>
    );
  const tolerance = toleranceOf(trial.plan);
  const mixed = trial.plan.points.some((point) => point.tolerance !== tolerance);
  const { shareOfTolerance: share, distinctCategories: categories } = analysis;
  return (
    <>
      <Panel
        id="analysis"
        title="What it shows"
        note={
          <>
            Of {analysis.hangings} hangings that are complete, of {trial.runs.length} planned. All values are
            deviations from the sheet.
            {mixed && ` The points have several tolerances: the smallest, ± ${tolerance} mm, counts for all.`}
          </>
        }
      >
        <div className={prose.prose}>
          <ul>
            {analysis.sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
        <FiguresRow
          figures={[
            {
              name: `Share of ± ${tolerance} mm that one reading takes`,
              value: share.value === null ? 'none' : percent(share.value),
              detail:
                share.low === null || share.high === null
                  ? (share.why ?? 'no interval')
                  : `95 % interval ${percent(share.low)} to ${percent(share.high)}`,
            },
            {
              name: 'Groups that can be told apart',
              value: categories?.count ?? 'none',
              detail:
                categories?.raw == null
                  ? 'It takes two points and some scatter.'
                  : `from ${categories.raw.toFixed(2)}, of these points alone: it has no interval`,
            },
          ]}
        />
        <Hangings
          drawing={trialDrawing(trial)}
          csv={`${trialAddress(trial.id)}/figures`}
          picture={`${trialAddress(trial.id)}/picture`}
        />
      </Panel>
      <Panel
        id="sources"
        title="Where the scatter comes from"
        note="By restricted maximum likelihood, setting nested in technicians, with limits of the profile. Few technicians make wide limits."
      >
        <EstimateTable
          caption="Scatter by its source, as an sd"
          head="Source"
          kind="sd"
          estimates={sourcesOf(analysis)}
        />
      </Panel>
      <Panel
        id="people"
        title="By technician"
        note="In the order of their codes. Where two intervals overlap widely, the trial does not tell these two apart."
      >
        <PeopleFigures people={analysis.people} />
      </Panel>
      <Panel
        id="two-ways"
        title="The same in two ways"
        note="Technicians crossed with points. Where both ways agree, the figures do not hang on the method; they part where a component comes out at zero or the trial is not balanced."
      >
        <TwoWays crossed={analysis.crossed} />
      </Panel>
    </>
  );
}

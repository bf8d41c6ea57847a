import { Tag } from '@/app/_look/tag';
import { plannedReadings, type TrialRow } from '@/lib/access';

/** Whether a trial is waited for. */
export function TrialState({ trial }: { trial: TrialRow }) {
  if (trial.closedAt !== null) return <Tag name="within">closed</Tag>;
  if (trial.entered === 0) return <Tag name="open">planned</Tag>;
  return trial.entered < plannedReadings(trial.plan) ? (
    <Tag name="undecided">being read</Tag>
  ) : (
    <Tag name="within">all read</Tag>
  );
}

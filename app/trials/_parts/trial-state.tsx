import { Tag } from '@/app/_look/tag';
import { words } from '@/app/_words/words';
import { plannedReadings, type TrialRow } from '@/lib/access';

/** Whether a trial is waited for. */
export function TrialState({ trial }: { trial: TrialRow }) {
  const t = words('trials');
  if (trial.closedAt !== null) return <Tag name="within">{t('states.closed')}</Tag>;
  if (trial.entered === 0) return <Tag name="open">{t('states.planned')}</Tag>;
  return trial.entered < plannedReadings(trial.plan) ? (
    <Tag name="undecided">{t('states.beingRead')}</Tag>
  ) : (
    <Tag name="within">{t('states.allRead')}</Tag>
  );
}

import { lazy } from 'react';
import { useTranslations } from 'use-intl/react';
import { More } from './more';

const Helper = lazy(() => import('@/app/bay/_helper/helper'));

/** The setting helper beside the round, with its clearance. */
export function HelperPanel({ clearance }: { clearance: number }) {
  const t = useTranslations('bay');
  return (
    <More title={t('helper.title')}>
      <Helper clearance={clearance} />
    </More>
  );
}

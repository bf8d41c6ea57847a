import { useTranslations } from 'use-intl/react';
import { classNames } from '@/app/_look/class-names';
import type { Step, StepProgress } from '@/lib/bay';
import styles from './steps.module.css';

interface StepsProps {
  progress: readonly StepProgress[];
  now: Step | null;
  /** Once the round is finished nobody goes anywhere. */
  go: ((step: Step) => void) | null;
  resume: (step: Step) => void;
}

/** How far each step is; a press goes there. */
export function Steps({ progress, now, go, resume }: StepsProps) {
  const t = useTranslations('bay');
  return (
    <ol data-plain className={styles.steps}>
      {progress
        .filter(({ wanted, done, skipped }) => wanted > 0 || done > 0 || skipped !== null)
        .map(({ step, wanted, done, skipped }) => (
          <li key={step} className={classNames(step === now && styles.now)}>
            <button
              type="button"
              className={styles.step}
              aria-current={step === now ? 'step' : undefined}
              disabled={skipped !== null || go === null}
              onClick={() => go?.(step)}
            >
              <span>{t(`steps.${step}`)}</span>
              <span className={styles.figure}>
                {skipped === null
                  ? t('steps.progress', { done, wanted })
                  : t('steps.skipped', { reason: skipped })}
              </span>
            </button>
            {skipped === null ? (
              <progress max={Math.max(wanted, 1)} value={done} aria-hidden="true" />
            ) : (
              go !== null && (
                <button type="button" className={styles.resume} onClick={() => resume(step)}>
                  {t('steps.resume')}
                </button>
              )
            )}
          </li>
        ))}
    </ol>
  );
}

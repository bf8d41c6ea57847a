import { useTranslations } from 'use-intl/react';
import { classNames } from '@/app/_look/class-names';
import { Glyph } from '@/app/_look/glyph';
import type { Shown } from '@/app/bay/_device/round-on-device';
import styles from './state-line.module.css';

interface StateLineProps {
  shown: Shown;
  /** Whether the page opens without a connection too; null while that is not known. */
  copied: boolean | null;
}

/** Where the entries are, in words. */
export function StateLine({ shown, copied }: StateLineProps) {
  const t = useTranslations('bay');
  const { state, trouble, own, head } = shown;
  const n = own.length;
  const calm = state === 'ready' && trouble === null;
  return (
    <div
      className={classNames(styles.line, !calm && state !== 'opening' && styles.trouble)}
      data-line={kind()}
    >
      <Glyph name={calm ? 'within' : 'caution'} />
      <p>
        {words()}
        {trouble?.is === 'sign-in' && (
          <>
            {' '}
            <a href={`/sign-in?to=/bay/${head.id}`}>{t('line.signInGo')}</a>
          </>
        )}
        {copied !== null && state === 'ready' && (
          <small>{copied ? t('line.copied') : t('line.notCopied')}</small>
        )}
      </p>
    </div>
  );

  function kind(): string {
    if (state !== 'ready') return state;
    return trouble?.is ?? (n === 0 ? 'all-sent' : 'on-their-way');
  }

  function words(): string {
    if (state === 'opening') return t('round.opening');
    if (state === 'failed') return t('line.failed');
    if (trouble === null) return n === 0 ? t('line.allSent') : t('line.onTheirWay', { n });
    if (trouble.is === 'refused') return t('line.refused', { n, why: trouble.why });
    if (trouble.is === 'sign-in') return t('line.signIn', { n });
    return n === 0 ? t('line.noLine') : t('line.waiting', { n });
  }
}

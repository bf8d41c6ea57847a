'use client';

import dynamic from 'next/dynamic';
import { useState, type ReactNode } from 'react';
import { useTranslations } from 'use-intl/react';
import { pointsFromText, type RateWords } from './point';
import styles from './rates-over-time.module.css';

const Live = dynamic(() => import('./live'), { ssr: false });

interface LiveLeafProps {
  words: RateWords;
  /** All points: see `pointsAsText`. */
  points: string;
  shop: number | null;
  label: string;
  /** The still figure. */
  children: ReactNode;
}

/** Shows the still figure at once; the chart that answers comes when the reader asks for it. */
export function LiveLeaf({ words, points, shop, label, children }: LiveLeafProps) {
  const t = useTranslations('figures');
  const [live, setLive] = useState(false);
  return (
    <>
      <div className={live ? styles.inPrint : undefined}>{children}</div>
      {live ? (
        <div className={styles.onScreen}>
          <Live words={words} points={pointsFromText(points)} shop={shop} label={label} />
        </div>
      ) : (
        <button
          type="button"
          className={styles.ask}
          data-needs-script
          data-print="no"
          onClick={() => setLive(true)}
        >
          {t('overTime.ask')}
        </button>
      )}
    </>
  );
}

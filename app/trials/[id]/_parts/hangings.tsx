import { DownloadLinks } from '@/app/_figures/download/download-links';
import type { Drawing } from '@/app/_figures/drawing/drawing';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { ScrollFrame } from '@/app/_look/scroll-frame';
import { words } from '@/app/_words/words';
import styles from './hangings.module.css';

interface HangingsProps {
  drawing: Drawing;
  /** Where the figures beside it, and the picture, are had as files. */
  csv: string;
  picture: string;
}

/** The mean of every hanging as a dot. */
export function Hangings({ drawing, csv, picture }: HangingsProps) {
  const t = words('trials');
  return (
    <figure className={styles.figure}>
      <ScrollFrame name={t('hanging.scroll')}>
        <StillDrawing drawing={drawing} />
      </ScrollFrame>
      <figcaption className={styles.caption}>{t('hanging.caption')}</figcaption>
      <DownloadLinks of={t('hanging.download')} csv={csv} picture={picture} />
    </figure>
  );
}

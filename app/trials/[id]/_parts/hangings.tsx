import { DownloadLinks } from '@/app/_figures/download/download-links';
import type { Drawing } from '@/app/_figures/drawing/drawing';
import { StillDrawing } from '@/app/_figures/drawing/still-drawing';
import { ScrollFrame } from '@/app/_look/scroll-frame';
import styles from './hangings.module.css';

interface HangingsProps {
  drawing: Drawing;
  /** Where the figures beside it, and the picture, are had as files. */
  csv: string;
  picture: string;
}

/** The mean of every hanging as a dot. */
export function Hangings({ drawing, csv, picture }: HangingsProps) {
  return (
    <figure className={styles.figure}>
      <ScrollFrame name="Picture of the hangings, scrolls sideways">
        <StillDrawing drawing={drawing} />
      </ScrollFrame>
      <figcaption className={styles.caption}>
        Deviation from the sheet. A dot is the mean of one hanging, a stroke the mean of one technician at one
        point, a dotted line the tolerance where it lies within the picture. The figures stand in the tables
        below.
      </figcaption>
      <DownloadLinks of="hangings" csv={csv} picture={picture} />
    </figure>
  );
}

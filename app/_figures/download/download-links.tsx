import { words } from '@/app/_words/words';
import styles from './download-links.module.css';

interface DownloadLinksProps {
  /** What is downloaded, for those who hear the link without its surroundings: `rates by technician`. */
  of: string;
  /** Addresses of the table as CSV and of the chart as a picture; each absent where there is none. */
  csv?: string;
  picture?: string;
}

/** Under a table or chart: the same as a file. Plain links, since what answers is no page. */
export function DownloadLinks({ of, csv, picture }: DownloadLinksProps) {
  const t = words('figures');
  return (
    <p className={styles.links} data-print="no">
      {csv !== undefined && (
        <a href={csv} download>
          {t('download.csv')}
          <span className="out-of-sight">: {of}</span>
        </a>
      )}
      {picture !== undefined && (
        <a href={picture} download>
          {t('download.picture')}
          <span className="out-of-sight">: {of}</span>
        </a>
      )}
    </p>
  );
}

import { DownloadLinks } from '@/app/_figures/download/download-links';
import { words } from '@/app/_words/words';
import type { SideBySide } from './technician-pictures';

/** One figure of all technicians as files. */
export function TechnicianFiles({ of }: { of: SideBySide }) {
  return (
    <DownloadLinks
      of={words('technicians')(`${of}.download`)}
      csv="/figures/technicians/download"
      picture={`/figures/technicians/picture?of=${of}`}
    />
  );
}

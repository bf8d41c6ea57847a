import { DownloadLinks } from '@/app/_figures/download/download-links';
import type { SideBySide } from './technician-pictures';

/** One figure of all technicians as files. */
export function TechnicianFiles({ of }: { of: SideBySide }) {
  return (
    <DownloadLinks
      of={`${of} by technician`}
      csv="/figures/technicians/download"
      picture={`/figures/technicians/picture?of=${of}`}
    />
  );
}

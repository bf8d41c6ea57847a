import type { Drawing } from '@/app/_figures/drawing/drawing';
import { svgText } from '@/app/_figures/drawing/svg-text';
import { csvText, type CsvTable } from './csv-text';

/** The answer that hands out a table as `<name>.csv`. */
export const csvFile = (name: string, table: CsvTable): Response =>
  file(`${plain(name)}.csv`, 'text/csv; charset=utf-8', csvText(table));

/** The answer that hands out a chart as `<name>.svg`, in light colours. */
export const pictureFile = (name: string, title: string, drawing: Drawing): Response =>
  file(`${plain(name)}.svg`, 'image/svg+xml; charset=utf-8', svgText(drawing, title));

const file = (name: string, type: string, text: string): Response =>
  new Response(text, {
    headers: {
      'Content-Type': type,
      'Content-Disposition': `attachment; filename="${name}"`,
      'Cache-Control': 'no-store',
    },
  });

/** A name that is safe in a header and in every file system. */
const plain = (name: string): string => name.replaceAll(/[^A-Za-z0-9-]+/g, '-');

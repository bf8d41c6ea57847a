import type { PrintedCell, PrintedRow, PrintedTable } from './document';
import { drawParagraph } from './draw-text';
import type { Line } from './lines';
import {
  aside,
  broken,
  element,
  INK,
  lineHeight,
  newPage,
  PAGE,
  room,
  rule,
  SIZE,
  wantRoom,
  WIDTH,
  within,
  write,
  type Paper,
} from './paper';

const PAD = { x: 3.5, y: 2.6 } as const;
/** Room for a hand, where a row is to be filled in. */
const TALL = 34;
const HIGH = lineHeight(SIZE.table);
/** Above a line across. */
const BAND = 3;

interface Place {
  x: number;
  width: number;
  numeric: boolean;
}

interface Laid {
  lines: Line[];
  place: Place;
}

/** A table with its caption; its heads stand again on every page that it goes on to. */
export function drawTable(paper: Paper, { caption, groups, columns, rows, empty }: PrintedTable): void {
  if (rows.length === 0) {
    if (empty !== undefined) drawParagraph(paper, { kind: 'paragraph', text: empty });
    return;
  }
  const places = placesOf(paper, columns);
  const heads = columns.map(({ head }, index) => laid(paper, head, places[index], true));
  const spans = spansOf(groups ?? [], places).map(({ head, place, columns: across }) => ({
    head,
    columns: across,
    ...laid(paper, head, place, true),
  }));
  const headHeight = heightOf(heads) + (spans.length === 0 ? 0 : heightOf(spans));

  if (paper.y > PAGE.top) paper.y += 4;
  const captionLines = broken(paper, [{ text: caption, weight: 'strong' }], WIDTH, SIZE.table + 0.5);
  const captionHigh = lineHeight(SIZE.table + 0.5);
  wantRoom(paper, captionLines.length * captionHigh + headHeight + 3 * HIGH + 20);
  const table = element(paper, 'Table');
  within(paper, element(paper, 'Caption', {}, table), 'Caption', () =>
    captionLines.forEach((line) => {
      write(paper, line, PAGE.left, paper.y, SIZE.table + 0.5);
      paper.y += captionHigh;
    }),
  );
  paper.y += 2;
  drawHeads(paper, table, heads, spans);

  const all = rows.map((row) => laidRow(paper, row, places));
  all.forEach((row, index) => {
    const next = all[index + 1];
    const wanted = row.band !== null && next !== undefined ? row.high + next.high : row.high;
    if (room(paper) < wanted && paper.y > PAGE.top + headHeight + 1) {
      newPage(paper);
      drawHeads(paper, null, heads, spans);
    }
    if (row.band !== null) drawBand(paper, table, row.band, columns.length);
    else drawRow(paper, table, row);
  });
  paper.y += 9;
}

/** Shares of the width, but each column as wide as the longest word of its head. */
function placesOf(paper: Paper, columns: PrintedTable['columns']): Place[] {
  const all = columns.reduce((sum, { width }) => sum + width, 0);
  const shares = columns.map(({ width }) => (width / all) * WIDTH);
  const least = columns.map(
    ({ head }) =>
      2 * PAD.x +
      Math.max(0, ...head.split(/[ ,]/).map((word) => paper.fonts.word(word, 'strong').bare * SIZE.table)) +
      0.1,
  );
  const spare = shares.map((share, index) => Math.max(0, share - (least[index] ?? 0)));
  const wanted = shares.reduce((sum, share, index) => sum + Math.max(0, (least[index] ?? 0) - share), 0);
  const room = spare.reduce((sum, one) => sum + one, 0);
  const given = room === 0 ? 0 : Math.min(1, wanted / room);
  let x: number = PAGE.left;
  return columns.map(({ numeric = false }, index) => {
    const width = Math.max(shares[index] ?? 0, least[index] ?? 0) - given * (spare[index] ?? 0);
    const place = { x, width, numeric };
    x += width;
    return place;
  });
}

function spansOf(
  groups: readonly { head: string; columns: number }[],
  places: readonly Place[],
): { head: string; place: Place; columns: number }[] {
  let from = 0;
  return groups.map(({ head, columns }) => {
    const own = places.slice(from, from + columns);
    from += columns;
    const width = own.reduce((sum, place) => sum + place.width, 0);
    return { head, columns, place: { x: own[0]?.x ?? PAGE.left, width, numeric: false } };
  });
}

function laid(paper: Paper, cell: PrintedCell, place: Place | undefined, strong: boolean): Laid {
  const at = place ?? { x: PAGE.left, width: WIDTH, numeric: false };
  const { text, strong: own = strong } = typeof cell === 'string' ? { text: cell } : cell;
  const weight = own ? 'strong' : 'plain';
  return { place: at, lines: broken(paper, [{ text, weight }], at.width - 2 * PAD.x, SIZE.table) };
}

const heightOf = (cells: readonly Laid[]): number =>
  Math.max(1, ...cells.map(({ lines }) => lines.length)) * HIGH + 2 * PAD.y;

/** A row as it will stand: its cells, or its line across, and how high it is with the space above. */
interface LaidRow {
  band: Line[] | null;
  cells: Laid[];
  high: number;
}

function laidRow(paper: Paper, row: PrintedRow, places: readonly Place[]): LaidRow {
  if ('band' in row) {
    const band = broken(paper, [{ text: row.band, weight: 'strong' }], WIDTH - 2 * PAD.x, SIZE.table);
    return { band, cells: [], high: band.length * HIGH + 2 * PAD.y + BAND };
  }
  const cells = row.cells.map((cell, index) => laid(paper, cell, places[index], row.strong ?? false));
  return { band: null, cells, high: Math.max(row.tall === true ? TALL : 0, heightOf(cells)) };
}

/** With a table: for the first time, as its heads. Without: again on a further page, for the eye alone. */
function drawHeads(
  paper: Paper,
  table: PDFKit.PDFStructureElement | null,
  heads: readonly (Laid & { columns?: number })[],
  spans: readonly (Laid & { head: string; columns: number })[],
): void {
  aside(paper, () => rule(paper, PAGE.left, PAGE.left + WIDTH, paper.y, INK.text, 0.9));
  for (const cells of [spans, heads]) {
    if (cells.length === 0) continue;
    const row = table === null ? null : element(paper, 'TR', {}, table);
    const high = heightOf(cells);
    for (const cell of cells) {
      const draw = () => writeCell(paper, cell, high, true);
      if (row === null) aside(paper, draw);
      else {
        const attributes = { scope: 'Column', columns: cell.columns ?? 1 } as const;
        within(paper, element(paper, 'TH', attributes, row), 'TH', draw);
      }
    }
    paper.y += high;
    if (cells === spans)
      aside(paper, () => {
        for (const { head, place } of spans)
          if (head !== '') rule(paper, place.x + PAD.x, place.x + place.width - PAD.x, paper.y);
      });
  }
  aside(paper, () => rule(paper, PAGE.left, PAGE.left + WIDTH, paper.y, INK.text, 0.6));
}

function writeCell(paper: Paper, { lines, place }: Laid, high: number, atFoot = false): void {
  const top = paper.y + PAD.y + (atFoot ? high - 2 * PAD.y - lines.length * HIGH : 0);
  lines.forEach((line, index) => {
    const x = place.numeric ? place.x + place.width - PAD.x - line.width : place.x + PAD.x;
    write(paper, line, x, top + index * HIGH, SIZE.table);
  });
}

function drawRow(paper: Paper, table: PDFKit.PDFStructureElement, { cells, high }: LaidRow): void {
  const of = element(paper, 'TR', {}, table);
  cells.forEach((cell, index) => {
    const names = index === 0;
    const own = element(paper, names ? 'TH' : 'TD', names ? { scope: 'Row' } : {}, of);
    within(paper, own, names ? 'TH' : 'TD', () => writeCell(paper, cell, high));
  });
  paper.y += high;
  aside(paper, () => rule(paper, PAGE.left, PAGE.left + WIDTH, paper.y, INK.faint, 0.6));
}

/** A line across that names the rows below it. */
function drawBand(
  paper: Paper,
  table: PDFKit.PDFStructureElement,
  lines: readonly Line[],
  columns: number,
): void {
  const of = element(paper, 'TR', {}, table);
  paper.y += BAND;
  within(paper, element(paper, 'TH', { scope: 'Row', columns }, of), 'TH', () =>
    lines.forEach((line, index) =>
      write(paper, line, PAGE.left + PAD.x, paper.y + PAD.y + index * HIGH, SIZE.table),
    ),
  );
  paper.y += lines.length * HIGH + 2 * PAD.y;
  aside(paper, () => rule(paper, PAGE.left, PAGE.left + WIDTH, paper.y, INK.line, 0.6));
}

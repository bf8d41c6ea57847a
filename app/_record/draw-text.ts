import type { ListItem, Paragraph } from './document';
import type { Piece } from './lines';
import {
  broken,
  element,
  INK,
  lineHeight,
  newPage,
  PAGE,
  room,
  SIZE,
  wantRoom,
  WIDTH,
  within,
  write,
  type Paper,
} from './paper';

/** A heading stays with some lines of what it heads. */
const WITH_HEADING = 74;

const HEADINGS = {
  1: { tag: 'H1', size: SIZE.title, before: 0, after: 5 },
  2: { tag: 'H2', size: SIZE.heading, before: 17, after: 4 },
  3: { tag: 'H3', size: SIZE.minor, before: 11, after: 3 },
} as const;

export function drawHeading(paper: Paper, level: 1 | 2 | 3, text: string): void {
  const { tag, size, before, after } = HEADINGS[level];
  // What waits for a page belongs to what stands before a new heading.
  if (level === 2 && paper.waiting.length > 0) newPage(paper);
  const lines = broken(paper, [{ text, weight: 'strong' }], WIDTH, size);
  wantRoom(paper, before + lines.length * lineHeight(size) + after + WITH_HEADING);
  if (paper.y > PAGE.top) paper.y += before;
  const heading = element(paper, tag);
  within(paper, heading, tag, () => {
    for (const line of lines) {
      write(paper, line, PAGE.left, paper.y, size);
      paper.y += lineHeight(size);
    }
  });
  if (level === 2) paper.pdf.outline.addItem(text);
  paper.y += after;
}

export function drawParagraph(paper: Paper, { lead, text, aside = false, language }: Paragraph): void {
  const of = element(paper, 'P', spoken(paper, language));
  flow(paper, of, 'P', piecesOf(lead, text), {
    size: aside ? SIZE.aside : SIZE.text,
    ink: aside ? INK.soft : INK.text,
    left: PAGE.left,
    width: WIDTH,
  });
  paper.y += aside ? 4 : 6;
}

export function drawList(paper: Paper, items: readonly ListItem[]): void {
  const list = element(paper, 'L');
  const indent = 12;
  for (const { lead, text, language } of items) {
    wantRoom(paper, 2 * lineHeight(SIZE.text));
    const item = element(paper, 'LI', spoken(paper, language), list);
    const mark = broken(paper, [{ text: '•', weight: 'plain' }], indent, SIZE.text)[0];
    within(paper, element(paper, 'Lbl', {}, item), 'Lbl', () => {
      if (mark !== undefined) write(paper, mark, PAGE.left + 1, paper.y, SIZE.text);
    });
    flow(paper, element(paper, 'LBody', {}, item), 'LBody', piecesOf(lead, text), {
      size: SIZE.text,
      ink: INK.text,
      left: PAGE.left + indent,
      width: WIDTH - indent,
    });
    paper.y += 3;
  }
  paper.y += 3;
}

export const piecesOf = (lead: string | undefined, text: string): Piece[] => [
  ...(lead === undefined ? [] : [{ text: `${lead} `, weight: 'strong' } as const]),
  { text, weight: 'plain' },
];

/** A language is only said where it is another than the document's. */
export const spoken = (paper: Paper, language: string | undefined): { lang?: string } =>
  language === undefined || language === paper.language ? {} : { lang: language };

/** Lines one below another, over as many pages as it takes; no line stands alone at the foot of a page. */
export function flow(
  paper: Paper,
  of: PDFKit.PDFStructureElement,
  type: string,
  pieces: readonly Piece[],
  { size, ink, left, width }: { size: number; ink: string; left: number; width: number },
): void {
  const high = lineHeight(size);
  let rest = broken(paper, pieces, width, size);
  if (rest.length > 1) wantRoom(paper, 2 * high);
  while (rest.length > 0) {
    const fit = Math.max(1, Math.floor(room(paper) / high));
    const now = rest.slice(0, fit);
    within(paper, of, type, () => {
      for (const line of now) {
        write(paper, line, left, paper.y, size, ink);
        paper.y += high;
      }
    });
    rest = rest.slice(fit);
    if (rest.length > 0) newPage(paper);
  }
}

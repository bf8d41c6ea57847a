import PDFDocument from 'pdfkit';
import type { Block, PrintedDocument } from './document';
import { drawCaution } from './draw-caution';
import { drawDrawing, drawWaiting } from './draw-drawing';
import { drawFacts } from './draw-facts';
import { drawSigning } from './draw-signing';
import { drawTable } from './draw-table';
import { drawHeading, drawList, drawParagraph } from './draw-text';
import { fontsOf } from './fonts';
import { aside, broken, element, INK, PAGE, rule, SIZE, WIDTH, within, write, type Paper } from './paper';

/**
 * A document as a PDF that is read as it is made: A4, tagged with its structure, its language and its title, with the
 * fonts that it uses. The same document gives the same pages.
 */
export function pdfOf(printed: PrintedDocument): PDFKit.PDFDocument {
  const { title, language, at } = printed;
  const when = new Date(at);
  const pdf = new PDFDocument({
    size: [PAGE.width, PAGE.height],
    margin: 0,
    bufferPages: true,
    autoFirstPage: true,
    tagged: true,
    lang: language,
    displayTitle: true,
    pdfVersion: '1.7' as const,
    font: '',
    info: { Title: title, Producer: 'Rehang', Creator: 'Rehang', CreationDate: when },
  });
  const root = pdf.struct('Document');
  pdf.addStructure(root);
  const paper: Paper = { pdf, root, language, fonts: fontsOf(pdf), y: PAGE.top, waiting: [] };

  const above = broken(paper, [{ text: printed.above, weight: 'plain' }], WIDTH, SIZE.text)[0];
  within(paper, element(paper, 'P'), 'P', () => {
    if (above !== undefined) write(paper, above, PAGE.left, paper.y, SIZE.text, INK.soft);
  });
  paper.y += 16;
  drawHeading(paper, 1, title);
  for (const block of printed.blocks) draw(paper, block);
  drawWaiting(paper);
  drawFeet(paper, printed);
  root.end();
  pdf.end();
  return pdf;
}

function draw(paper: Paper, block: Block): void {
  switch (block.kind) {
    case 'heading':
      return drawHeading(paper, block.level, block.text);
    case 'paragraph':
      return drawParagraph(paper, block);
    case 'facts':
      return drawFacts(paper, block.facts);
    case 'list':
      return drawList(paper, block.items);
    case 'table':
      return drawTable(paper, block);
    case 'caution':
      return drawCaution(paper, block);
    case 'drawing':
      return drawDrawing(paper, block.drawing, block.caption);
    case 'signing':
      return drawSigning(paper, block);
  }
}

/** What stands at the foot of every page; known when all pages are. */
function drawFeet(paper: Paper, { foot, pageOf }: PrintedDocument): void {
  const { start, count } = paper.pdf.bufferedPageRange();
  const y = PAGE.height - PAGE.bottom + 22;
  for (let page = 0; page < count; page++) {
    paper.pdf.switchToPage(start + page);
    const number = broken(paper, [{ text: pageOf(page + 1, count), weight: 'plain' }], WIDTH, SIZE.foot)[0];
    const room = WIDTH - (number?.width ?? 0) - 14;
    const lines = broken(paper, [{ text: foot, weight: 'plain' }], room, SIZE.foot).slice(0, 2);
    aside(
      paper,
      () => {
        rule(paper, PAGE.left, PAGE.left + WIDTH, y - 5, INK.line);
        lines.forEach((line, index) => write(paper, line, PAGE.left, y + index * 10.5, SIZE.foot, INK.soft));
        if (number !== undefined)
          write(paper, number, PAGE.left + WIDTH - number.width, y, SIZE.foot, INK.soft);
      },
      'Pagination',
    );
  }
}

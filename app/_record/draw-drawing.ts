import type { Drawing, Shape } from '@/app/_figures/drawing/drawing';
import { INKS, PAPER, STRONG_INK, WORD_INK } from '@/app/_figures/drawing/inks';
import { drawParagraph } from './draw-text';
import { broken, element, newPage, PAGE, room, WIDTH, within, write, type Paper } from './paper';

/** Of the words in a drawing that have no size of their own, in its units: what the page draws them at. */
const WORDS = 14;
/** How far the top of a line stands above the foot of its letters, in heights of the font (Source Sans 3). */
const ASCENT = 1.024;
/** Room for a caption, points. */
const CAPTION = 44;
const TALLEST = PAGE.height - PAGE.top - PAGE.bottom - CAPTION;

/** A still chart, the same shapes as on a page, in the colours of light; what it shows is told to those who hear it. */
export function drawDrawing(paper: Paper, drawing: Drawing, caption: string): void {
  const scale = Math.min(WIDTH / drawing.width, TALLEST / drawing.height);
  const height = drawing.height * scale;
  if (room(paper) < height + CAPTION && paper.y > PAGE.top) {
    paper.waiting.push(() => drawDrawing(paper, drawing, caption));
    return;
  }
  const { pdf } = paper;
  within(paper, element(paper, 'Figure', { alt: drawing.label }), 'Figure', () => {
    pdf
      .save()
      .translate(PAGE.left + (WIDTH - drawing.width * scale) / 2, paper.y)
      .scale(scale);
    for (const shape of drawing.shapes) drawShape(paper, shape);
    pdf.restore();
  });
  paper.y += height + 4;
  drawParagraph(paper, { kind: 'paragraph', text: caption, aside: true });
  paper.y += 6;
}

/** What still waits for a page gets one. */
export function drawWaiting(paper: Paper): void {
  if (paper.waiting.length > 0) newPage(paper);
}

function drawShape(paper: Paper, shape: Shape): void {
  if (shape.kind === 'word') drawWord(paper, shape);
  else {
    const { pdf } = paper;
    const { light, width, ...rest } = INKS[shape.ink];
    if (shape.kind === 'dot') pdf.circle(shape.x, shape.y, shape.r);
    else pdf.path(shape.d);
    pdf.lineWidth(width).strokeColor(light).undash();
    const [on, off] = 'dash' in rest ? rest.dash.split(' ').map(Number) : [];
    if (on !== undefined && off !== undefined) pdf.dash(on, { space: off });
    const fill = 'hollow' in rest ? PAPER.light : 'filled' in rest ? light : null;
    if (fill === null) pdf.stroke();
    else pdf.fillAndStroke(fill, light);
    pdf.undash();
  }
}

function drawWord(
  paper: Paper,
  { text, x, y, anchor, size = WORDS, strong }: Shape & { kind: 'word' },
): void {
  const weight = strong === true ? 'strong' : 'plain';
  const line = broken(paper, [{ text, weight }], Infinity, size)[0];
  if (line === undefined) return;
  const back = { start: 0, middle: line.width / 2, end: line.width }[anchor];
  const ink = strong === true ? STRONG_INK.light : WORD_INK.light;
  // A drawing gives the foot of its letters; a line is written from its top.
  write(paper, line, x - back, y - ASCENT * size, size, ink);
}

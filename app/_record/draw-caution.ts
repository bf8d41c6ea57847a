import { piecesOf } from './draw-text';
import {
  aside,
  broken,
  element,
  INK,
  lineHeight,
  PAGE,
  SIZE,
  wantRoom,
  WIDTH,
  within,
  write,
  type Paper,
} from './paper';

const PAD = 8;

/** What must not be overlooked: in a frame that is never torn by the end of a page. */
export function drawCaution(paper: Paper, { title, text }: { title: string; text: string }): void {
  const high = lineHeight(SIZE.text);
  const lines = broken(paper, piecesOf(title, text), WIDTH - 2 * PAD - 4, SIZE.text);
  const height = lines.length * high + 2 * PAD;
  wantRoom(paper, height + 4);
  const top = paper.y + 2;
  aside(paper, () => {
    paper.pdf.rect(PAGE.left, top, WIDTH, height).lineWidth(0.8).strokeColor(INK.text).stroke();
    paper.pdf.rect(PAGE.left, top, 4, height).fillColor(INK.text).fill();
  });
  within(paper, element(paper, 'P'), 'P', () =>
    lines.forEach((line, index) =>
      write(paper, line, PAGE.left + PAD + 4, top + PAD + index * high, SIZE.text),
    ),
  );
  paper.y = top + height + 10;
}

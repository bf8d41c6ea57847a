import { drawHeading, drawParagraph } from './draw-text';
import {
  aside,
  broken,
  element,
  INK,
  lineHeight,
  PAGE,
  rule,
  SIZE,
  wantRoom,
  WIDTH,
  within,
  write,
  type Paper,
} from './paper';

const GAP = 18;
/** Room for a hand above each line. */
const HAND = 42;
const ROW = HAND + lineHeight(SIZE.aside) + 4;

interface Signing {
  title: string;
  text: string;
  names: readonly string[];
}

/** What is signed and the lines for it, two side by side; never torn by the end of a page. */
export function drawSigning(paper: Paper, { title, text, names }: Signing): void {
  const lines = broken(paper, [{ text, weight: 'plain' }], WIDTH, SIZE.text).length;
  wantRoom(paper, 52 + lines * lineHeight(SIZE.text) + Math.ceil(names.length / 2) * ROW);
  drawHeading(paper, 2, title);
  drawParagraph(paper, { kind: 'paragraph', text });
  const width = (WIDTH - GAP) / 2;
  for (let from = 0; from < names.length; from += 2) {
    paper.y += HAND;
    names.slice(from, from + 2).forEach((name, column) => {
      const x = PAGE.left + column * (width + GAP);
      aside(paper, () => rule(paper, x, x + width, paper.y, INK.text));
      const line = broken(paper, [{ text: name, weight: 'plain' }], width, SIZE.aside)[0];
      within(paper, element(paper, 'P'), 'P', () => {
        if (line !== undefined) write(paper, line, x, paper.y + 3, SIZE.aside, INK.soft);
      });
    });
    paper.y += ROW - HAND;
  }
}

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
const ROOM = { plain: 34, tall: 52 } as const;

/** Lines to be filled in by hand, two side by side, the name of each below it. */
export function drawLines(paper: Paper, names: readonly string[], tall: boolean): void {
  const high = tall ? ROOM.tall : ROOM.plain;
  const width = (WIDTH - GAP) / 2;
  for (let from = 0; from < names.length; from += 2) {
    wantRoom(paper, high + lineHeight(SIZE.aside) + 4);
    paper.y += high;
    names.slice(from, from + 2).forEach((name, column) => {
      const x = PAGE.left + column * (width + GAP);
      aside(paper, () => rule(paper, x, x + width, paper.y, INK.text));
      const line = broken(paper, [{ text: name, weight: 'plain' }], width, SIZE.aside)[0];
      within(paper, element(paper, 'P'), 'P', () => {
        if (line !== undefined) write(paper, line, x, paper.y + 3, SIZE.aside, INK.soft);
      });
    });
    paper.y += lineHeight(SIZE.aside) + 4;
  }
  paper.y += 6;
}

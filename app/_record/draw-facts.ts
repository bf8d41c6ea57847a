import {
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

/** What the names take of the width, at most. */
const NAMES = 0.34;

/** Names with their values, as a table of two columns without lines. */
export function drawFacts(paper: Paper, facts: readonly { name: string; value: string }[]): void {
  const table = element(paper, 'Table');
  const high = lineHeight(SIZE.text);
  const at = PAGE.left + WIDTH * NAMES;
  for (const { name, value } of facts) {
    const names = broken(paper, [{ text: name, weight: 'plain' }], WIDTH * NAMES - 10, SIZE.text);
    const values = broken(paper, [{ text: value, weight: 'strong' }], WIDTH * (1 - NAMES), SIZE.text);
    const lines = Math.max(names.length, values.length);
    wantRoom(paper, lines * high);
    const row = element(paper, 'TR', {}, table);
    within(paper, element(paper, 'TH', { scope: 'Row' }, row), 'TH', () =>
      names.forEach((line, index) =>
        write(paper, line, PAGE.left, paper.y + index * high, SIZE.text, INK.soft),
      ),
    );
    within(paper, element(paper, 'TD', {}, row), 'TD', () =>
      values.forEach((line, index) => write(paper, line, at, paper.y + index * high, SIZE.text)),
    );
    paper.y += lines * high + 1.5;
  }
  paper.y += 6;
}

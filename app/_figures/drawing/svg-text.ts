import type { Drawing, Shape } from './drawing';
import { INKS, PAPER, STRONG_INK, WORD_INK } from './inks';

const MARGIN = 16;
const LINE = 22;
const FONT = 'system-ui, sans-serif';

/** A drawing as a file of its own: light colours, its title above it, no styles that a viewer might refuse. */
export function svgText({ width, height, label, shapes }: Drawing, title: string): string {
  const [w, h] = [width + 2 * MARGIN, height + 2 * MARGIN + LINE];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}" role="img" font-family="${FONT}">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(label)}</desc>`,
    `<rect width="${w}" height="${h}" fill="${PAPER.light}"/>`,
    `<text x="${MARGIN}" y="${MARGIN + 12}" font-size="16" font-weight="600" fill="${WORD_INK.light}">${escaped(title)}</text>`,
    `<g transform="translate(${MARGIN} ${MARGIN + LINE})">`,
    ...shapes.map(drawn),
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

/** Words stand over a rim of paper, so that lines below do not run through the letters. */
function wordLook({ strong }: Extract<Shape, { kind: 'word' }>): string {
  const ink = strong === true ? `font-weight="650" fill="${STRONG_INK.light}"` : `fill="${WORD_INK.light}"`;
  return `${ink} stroke="${PAPER.light}" stroke-width="3" paint-order="stroke"`;
}

function drawn(shape: Shape): string {
  if (shape.kind === 'word')
    return `<text x="${shape.x}" y="${shape.y}" text-anchor="${shape.anchor}" font-size="${shape.size ?? 14}" ${wordLook(shape)}>${escaped(shape.text)}</text>`;
  const { light, width, ...rest } = INKS[shape.ink];
  const dash = 'dash' in rest ? ` stroke-dasharray="${rest.dash}"` : '';
  const look = `fill="${'hollow' in rest ? PAPER.light : 'filled' in rest ? light : 'none'}" stroke="${light}" stroke-width="${width}"${dash}`;
  return shape.kind === 'dot'
    ? `<circle cx="${shape.x}" cy="${shape.y}" r="${shape.r}" ${look}/>`
    : `<path d="${escaped(shape.d)}" ${look}/>`;
}

const ENTITIES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text within XML; characters that XML cannot hold at all are left out. */
const escaped = (text: string): string =>
  text
    .replaceAll(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .replaceAll(/[&<>"]/g, (character) => ENTITIES[character] ?? '');

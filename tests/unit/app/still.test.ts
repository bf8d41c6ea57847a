import { renderToStaticMarkup } from 'react-dom/server';
import Link from 'next/link';
import { createElement as h, Fragment, isValidElement, type ReactElement, type ReactNode } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { drawnOnce, still } from '@/app/_look/still';
import { pieceInPlace } from '@/lib/serving/piece-place';

const Row = ({ name, n }: { name: string; n: number }) =>
  h(
    'tr',
    { key: name },
    h('th', { scope: 'row', className: 'names' }, name),
    h('td', { colSpan: 2 }, n, ' mm'),
  );
const Later = async ({ text }: { text: string }) => Promise.resolve(h('em', null, text));

const RATES = [0.1, 0.25, 1];
const table = h(
  'table',
  { className: 'table' },
  h('caption', { id: 'what' }, 'Rates & "limits" <of one>'),
  h('thead', null, h('tr', null, h('th', { scope: 'col', 'aria-sort': 'ascending' }, 'Job'))),
  h(
    'tbody',
    null,
    RATES.map((n) => h(Row, { key: n, name: `O'Hara ${n}`, n })),
    h('tr', { hidden: true, 'data-out': true, 'aria-hidden': false }, h('td', null, null, false, h('br'))),
  ),
);
const drawing = h(
  'svg',
  { viewBox: '0 0 10 10', role: 'img', 'aria-label': 'a < b' },
  h('path', { d: 'M0 0L1 1', strokeWidth: 1.5, strokeDasharray: '2 2', className: undefined }),
  h('text', { x: 1, y: 2, textAnchor: 'middle', fontSize: 12 }, '−0.4\u00a0mm'),
);

const written = async (node: ReactNode): Promise<string> =>
  renderToStaticMarkup(h(Fragment, null, await still(node)));

function elementsOf(node: ReactNode): number {
  if (Array.isArray(node))
    return (node as ReactNode[]).reduce<number>((sum, one) => sum + elementsOf(one), 0);
  return isValidElement<{ children?: ReactNode }>(node) ? 1 + elementsOf(node.props.children) : 0;
}

describe('still', () => {
  it.each([
    ['a table', table],
    ['a drawing', drawing],
    ['parts of a page', h('main', { tabIndex: -1 }, h('section', { id: 'one' }, table, 'and ', 3), drawing)],
    [
      'a form with its controls',
      h(
        'form',
        { method: 'post', action: '/x?a&b', className: 'f', noValidate: true },
        h('label', { htmlFor: 'n' }, h('b', null, 'N')),
        h('input', {
          name: 'n',
          type: 'number',
          defaultValue: '<3',
          id: 'n',
          required: true,
          readOnly: false,
        }),
        h('input', { type: 'checkbox', value: 'a', name: 'c', defaultChecked: true, disabled: true }),
        h('textarea', { name: 'why', defaultValue: '\n<b> & more', rows: 3, maxLength: 200 }),
        h(
          'div',
          null,
          h(
            'p',
            { tabIndex: 0 },
            h('button', { name: 'go', value: '1', type: 'submit', formNoValidate: true }, 'Go'),
          ),
        ),
        h('a', { href: '/file', download: true }, 'File'),
      ),
    ],
    [
      'a choice',
      h(
        'select',
        { name: 'month', defaultValue: '2025-02' },
        h('option', { value: '' }, 'any'),
        ['2025-01', '2025-02', 'R&D'].map((one) => h('option', { key: one, value: one }, `<${one}>`)),
      ),
    ],
    ['details', h('details', { open: true }, h('summary', null, 'More'), h('p', null, h('i', null, 'less')))],
  ])('draws %s to the letter as React does', async (_, node) => {
    expect(await written(node)).toBe(renderToStaticMarkup(h(Fragment, null, node)));
  });

  it('writes a table or a drawing as one element', async () => {
    expect([elementsOf(await still(table)), elementsOf(await still(drawing))]).toEqual([1, 1]);
  });

  it('waits for components that wait', async () => {
    const page = h(
      'main',
      null,
      h('p', null, h(Later as unknown as (props: { text: string }) => ReactElement, { text: 'a&b' })),
    );
    expect(await written(page)).toBe('<main><p><em>a&amp;b</em></p></main>');
  });

  it('leaves components of the browser and what is around them to React, and writes the rest', async () => {
    const Live = Object.assign(() => null, { $$typeof: Symbol.for('react.client.reference') });
    const page = h('p', null, h(Live), h('span', null, h('b', null, 'n')));
    const [live, rest] = (((await still(page)) as ReactElement<{ children: ReactNode }>).props.children ??
      []) as ReactElement[];
    expect(live?.type).toBe(Live);
    expect(rest?.props).toEqual({ as: 'span', own: {}, markup: '<b>n</b>' });
  });

  it('lets a section stay an element, so that what is typed or opened in it outlasts a change around it', async () => {
    const page = h('main', null, h('section', null, h('p', null, 'a'), h('p', null, 'b')), h('p', null, 'c'));
    const inside = ((await still(page)) as ReactElement<{ children: ReactElement<{ as: string }>[] }>).props;
    expect(inside.children.map(({ type, props }) => (typeof type === 'string' ? type : props.as))).toEqual([
      'section',
      'p',
    ]);
  });

  it('sends the markup of a whole page once: beside it stands only which piece it is', async () => {
    const pieces: string[] = [];
    vi.stubGlobal('rehangPieces', { getStore: () => pieces });
    const drawn = (await still(table)) as ReactElement;
    expect(drawn.props).toEqual({ as: 'table', own: { className: 'table' }, piece: 0 });
    const [part] = pieces;
    expect(
      renderToStaticMarkup(drawn)
        .replace(' data-piece="0"', '')
        .replace(pieceInPlace(0), part ?? ''),
    ).toBe(renderToStaticMarkup(table));
    vi.unstubAllGlobals();
  });

  it('draws a component once that is drawn from what it is given alone', async () => {
    let drawn = 0;
    const Once = drawnOnce(({ name }: { name: string }) => h('p', null, h('b', null, `${name} ${++drawn}`)));
    expect(await written([h(Once, { key: 1, name: 'a' }), h(Once, { key: 2, name: 'b' })])).toBe(
      '<p><b>a 1</b></p><p><b>b 2</b></p>',
    );
    expect(await written(h('div', null, h(Once, { name: 'a' })))).toBe('<div><p><b>a 1</b></p></div>');
  });

  it('writes the links of rows as anchors that are followed', async () => {
    const row = h(
      'tr',
      null,
      h('td', null, h(Link, { href: '/jobs/A?b=1&c=2', prefetch: false, className: 'x' }, 'A')),
    );
    expect(await written(h('table', null, h('tbody', null, row)))).toContain(
      '<td><a href="/jobs/A?b=1&amp;c=2" class="x" data-followed="">A</a></td>',
    );
  });

  it('leaves to React what only React can give to an element', async () => {
    const inside = h('p', null, h('b', { style: { color: 'red' } }, h('i', null, 'x')));
    expect(await written(inside)).toBe('<p><b style="color:red"><i>x</i></b></p>');
  });
});

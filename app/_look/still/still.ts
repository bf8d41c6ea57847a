import Link from 'next/link';
import {
  cloneElement,
  createElement,
  Fragment,
  isValidElement,
  type ReactElement,
  type ReactNode,
} from 'react';
import { LastUsed } from '@/lib/memory';
import { attributes, escaped } from './attributes';
import { FOLLOWED } from './followed';
import { drawingName } from './drawn-once';
import { Piece } from './piece';
import { handedOn } from './pieces';

type Props = Readonly<Record<string, unknown>> & { children?: ReactNode };
type Component = (props: Props) => ReactNode;
type Soon<Value> = Value | Promise<Value>;

/** An element whose content is known to the last letter: what React need not look into. */
interface Written {
  tag: string;
  /** What it is given beside its content. */
  own: Readonly<Record<string, unknown>>;
  /** The same as markup. */
  attributes: string;
  content: string;
  key: string | null;
  /** It stays an element of its own. */
  bound: boolean;
}

/** An element that is left to React, around what may be written. */
interface Around {
  around: ReactElement<Props>;
  inside: Part;
}

/** A text, an element that is written, some of them, or what is left to React. Made once, it may be put on many pages. */
type Part = string | Written | Part[] | Around | { left: ReactNode };

/** Those that the browser or React itself does something with, or that hold text by rules of their own. */
const ALIVE = new Set('dialog iframe img link meta pre script style title'.split(' '));
/** Those that stay elements, so that what changes within them is no change of what is around them. */
const BOUNDS = new Set(['details', 'fieldset', 'form', 'main', 'section']);
const WITHOUT_CONTENT = new Set(['br', 'col', 'hr', 'input', 'wbr']);
/** Within these there are many of a kind, none of which stays an element. */
const MANY = new Set(['svg', 'tbody']);

/**
 * Draws the components of the server, and writes what stays as it is on a page (tables, drawings, texts, links,
 * controls of plain forms) as markup, in as few pieces as may be. React takes every element through three steps on
 * the server and one in the browser; a piece of markup it hands on. Components of the browser are left to React, and
 * the elements around them.
 */
export async function still(node: ReactNode, hand: Hand = handedOn): Promise<ReactNode> {
  return nodeOf(await partOf(node, false), hand);
}

/**
 * The same for what the browser may have to make from the payload alone: where a page turns out not to exist, or not
 * to be for the reader, the framework sends no markup, and neither that page nor what is around it finds any.
 */
export const stillAlone = (node: ReactNode): Promise<ReactNode> => still(node, (markup) => ({ markup }));

type Hand = (markup: string) => ReturnType<typeof handedOn>;

/** @param many within rows or a drawing */
function partOf(node: ReactNode, many: boolean): Soon<Part> {
  if (typeof node === 'string') return node;
  if (typeof node === 'number' || typeof node === 'bigint') return String(node);
  if (node === null || node === undefined || typeof node === 'boolean') return '';
  if (Array.isArray(node)) return together((node as ReactNode[]).map((one) => partOf(one, many)));
  if (node instanceof Promise) return node.then((found: ReactNode) => partOf(found, many));
  return isValidElement<Props>(node) ? elementPart(node, many) : { left: node };
}

function elementPart(element: ReactElement<Props>, many: boolean): Soon<Part> {
  const { type, props, key } = element;
  if (typeof type === 'string') return hostPart(element, many);
  if ((type as unknown) === Fragment) return partOf(props.children, many);
  if ((type as unknown) === Link) return linkPart(element, many);
  if (isOfServer(type)) {
    const name = drawingName(type, props);
    const draw = () => partOf(type(props), many);
    const drawn = name === null ? draw() : keptPart(many ? `${name} many` : name, draw);
    return then(drawn, (part) => (key === null ? part : keyed(part, key)));
  }
  // A component of the browser: what it is given to show may be written all the same.
  return props.children === undefined
    ? { left: element }
    : then(partOf(props.children, many), (inside) => wrapping(element, inside));
}

const isOfServer = (type: unknown): type is Component => typeof type === 'function' && !('$$typeof' in type);

function hostPart(element: ReactElement<Props>, around: boolean): Soon<Part> {
  const tag = element.type as string;
  const many = around || MANY.has(tag);
  const { children, ...own } = element.props;
  if (tag === 'textarea') return textPart(element, own);
  return then(partOf(children, many), (inside) => {
    const written = ALIVE.has(tag) ? null : writtenOf(tag, own, inside);
    if (written !== null)
      return { tag, own, ...written, key: element.key, bound: !many && BOUNDS.has(tag) } satisfies Written;
    return typeof inside === 'string' ? { left: element } : wrapping(element, inside);
  });
}

function writtenOf(
  tag: string,
  own: Readonly<Record<string, unknown>>,
  inside: Part,
): Pick<Written, 'attributes' | 'content'> | null {
  const { defaultValue, ...rest } = own;
  const isChoice = tag === 'select';
  const [written, content] = [
    attributes(tag, isChoice ? rest : own),
    isChoice ? choicesOf(inside, defaultValue) : markupOf(inside),
  ];
  return written === null || content === null ? null : { attributes: written, content };
}

/** What stands in a field of several lines is its content; a first line that is empty is written twice. */
function textPart(element: ReactElement<Props>, own: Readonly<Record<string, unknown>>): Part {
  const { defaultValue = '', ...rest } = own;
  const written = attributes('textarea', rest);
  if (written === null || typeof defaultValue !== 'string' || element.props.children !== undefined)
    return { left: element };
  const content = (defaultValue.startsWith('\n') ? '\n' : '') + escaped(defaultValue);
  return { tag: 'textarea', own, attributes: written, content, key: element.key, bound: false };
}

/** What may be chosen, the one that is chosen marked; null where something is left to React. */
function choicesOf(part: Part, chosen: unknown): string | null {
  if (Array.isArray(part)) {
    const all = part.map((one) => choicesOf(one, chosen));
    return all.includes(null) ? null : all.join('');
  }
  if (!isWritten(part) || part.tag !== 'option') return part === '' ? '' : null;
  const { value } = part.own;
  const isChosen = (value === undefined ? part.content : value) === chosen;
  return `<option${part.attributes}${isChosen ? ' selected=""' : ''}>${part.content}</option>`;
}

/** A link as the anchor that it comes to, marked to be followed without loading the page anew. */
function linkPart(element: ReactElement<Props>, many: boolean): Soon<Part> {
  const { prefetch: _, ...rest } = element.props;
  const anchor = createElement('a', {
    ...rest,
    [FOLLOWED]: '',
    ...(element.key !== null && { key: element.key }),
  });
  return then(hostPart(anchor, many), (part) =>
    isWritten(part)
      ? part
      : then(partOf(element.props.children, many), (inside) => wrapping(element, inside)),
  );
}

const isWritten = (part: Part): part is Written => typeof part === 'object' && 'attributes' in part;

/** Null where something is left to React. */
function markupOf(part: Part): string | null {
  if (typeof part === 'string') return escaped(part);
  if (isWritten(part)) return part.bound ? null : elementMarkup(part);
  if (!Array.isArray(part)) return null;
  let all = '';
  for (const one of part) {
    const markup = markupOf(one);
    if (markup === null) return null;
    all += markup;
  }
  return all;
}

const elementMarkup = ({ tag, attributes: own, content }: Written): string =>
  WITHOUT_CONTENT.has(tag) ? `<${tag}${own}/>` : `<${tag}${own}>${content}</${tag}>`;

function nodeOf(part: Part, hand: Hand): ReactNode {
  if (typeof part === 'string') return part;
  if (isWritten(part)) return elementOf(part, hand);
  if (Array.isArray(part)) return part.map((one) => nodeOf(one, hand));
  return 'left' in part ? part.left : withChildren(part.around, nodeOf(part.inside, hand));
}

function elementOf({ tag, own, content, key }: Written, hand: Hand): ReactNode {
  const name = key === null ? {} : { key };
  if (content === '' || tag === 'textarea') return createElement(tag, { ...own, ...name });
  if (!/[<&]/.test(content)) return createElement(tag, { ...own, ...name }, content);
  return createElement(Piece, { as: tag, own, ...hand(content), ...name });
}

/** What is kept of drawings, in characters. */
const MOST = 24_000_000;

const drawings = new LastUsed<Part>(MOST, (part, name) => sizeOf(part) + name.length);

function keptPart(name: string, draw: () => Soon<Part>): Soon<Part> {
  const known = drawings.get(name);
  if (known !== undefined) return known;
  return then(draw(), (part) => {
    drawings.set(name, part);
    return part;
  });
}

function sizeOf(part: Part): number {
  if (typeof part === 'string') return part.length;
  if (isWritten(part)) return part.content.length + 200;
  if (Array.isArray(part)) return part.reduce((sum, one) => sum + sizeOf(one), 0);
  return 'left' in part ? 500 : 500 + sizeOf(part.inside);
}

/** Its old content is let go: a part may be kept for long. */
const wrapping = (element: ReactElement<Props>, inside: Part): Around => ({
  around: cloneElement(element, { children: undefined }),
  inside,
});

function withChildren(element: ReactElement<Props>, children: ReactNode): ReactNode {
  return Array.isArray(children)
    ? cloneElement(element, {}, ...(children as ReactNode[]))
    : cloneElement(element, {}, children);
}

function keyed(part: Part, key: string): Part {
  if (isWritten(part)) return { ...part, key };
  if (typeof part === 'string' || Array.isArray(part)) return part;
  if ('around' in part) return { ...part, around: cloneElement(part.around, { key }) };
  return isValidElement(part.left) ? { left: cloneElement(part.left, { key }) } : part;
}

/** A promise only where something has to be awaited: there are thousands of elements on a page. */
const then = <Value, Result>(value: Soon<Value>, next: (value: Value) => Soon<Result>): Soon<Result> =>
  value instanceof Promise ? value.then(next) : next(value);

function together(parts: Soon<Part>[]): Soon<Part[]> {
  const now = parts.filter((part): part is Part => !(part instanceof Promise));
  return now.length === parts.length ? now : Promise.all(parts.map((part) => Promise.resolve(part)));
}

import Link from 'next/link';
import {
  cloneElement,
  createElement,
  Fragment,
  isValidElement,
  type ReactElement,
  type ReactNode,
} from 'react';
import { attributes, escaped } from './attributes';
import { FOLLOWED } from './followed';

type Props = Readonly<Record<string, unknown>> & { children?: ReactNode };
type Component = (props: Props) => ReactNode;
type Soon<Value> = Value | Promise<Value>;

/** An element whose content is known to the last letter: what React need not look into. */
class Written {
  constructor(
    readonly element: ReactElement<Props>,
    readonly attributes: string,
    readonly content: string,
    readonly key: string | null,
  ) {}

  get markup(): string {
    const tag = this.element.type as string;
    return WITHOUT_CONTENT.has(tag)
      ? `<${tag}${this.attributes}/>`
      : `<${tag}${this.attributes}>${this.content}</${tag}>`;
  }

  get node(): ReactNode {
    const { element, key } = this;
    if (!this.content.includes('<')) return key === element.key ? element : cloneElement(element, { key });
    return withMarkup(element, this.content, key);
  }
}

/** A text, an element that is written, some of them, or what is left to React. */
type Part = string | Written | Part[] | { left: ReactNode };

/** Those that the reader, a browser or React itself does something with. */
const ALIVE = new Set(
  'button datalist dialog form iframe img input link meta pre script select style textarea title'.split(' '),
);
/** Those that stay elements, so that what changes within them is no change of what is around them. */
const BOUNDS = new Set(['details', 'fieldset', 'main', 'section']);
const WITHOUT_CONTENT = new Set(['br', 'col', 'hr', 'wbr']);
/** Within these there may be a link to a row: links are written here too, and `FollowLinks` follows them. */
const MANY = new Set(['svg', 'tbody']);

/**
 * Draws the components of the server, and writes what stays as it is on a page (rows of tables, drawings, texts) as
 * markup, in as few pieces as may be. React takes every element through three steps on the server and one in the
 * browser; a piece of markup it hands on. What is alive is left to React: components of the browser, links outside of
 * rows, controls, and the elements around them.
 */
export async function still(node: ReactNode): Promise<ReactNode> {
  return nodeOf(await partOf(node, false));
}

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
  if ((type as unknown) === Link && many) return hostPart(asAnchor(element), many);
  if (isOfServer(type) && (type as unknown) !== Link)
    return then(partOf(type(props), many), (part) => (key === null ? part : keyed(part, key)));
  // A component of the browser: what it is given to show may be written all the same.
  return props.children === undefined
    ? { left: element }
    : then(partOf(props.children, many), (part) => ({ left: withChildren(element, part) }));
}

const isOfServer = (type: unknown): type is Component => typeof type === 'function' && !('$$typeof' in type);

function hostPart(element: ReactElement<Props>, around: boolean): Soon<Part> {
  const tag = element.type as string;
  const many = around || MANY.has(tag);
  const own = ALIVE.has(tag) || (!many && BOUNDS.has(tag)) ? null : attributes(element.props);
  return then(partOf(element.props.children, many), (inside) => {
    const content = own === null ? null : markupOf(inside);
    if (own !== null && content !== null) return new Written(element, own, content, element.key);
    const choices = tag === 'select' ? choicesOf(inside, element.props.defaultValue) : null;
    if (choices !== null) return { left: withMarkup(element, choices) };
    return { left: typeof inside === 'string' ? element : withChildren(element, inside) };
  });
}

/** What may be chosen, the one that is chosen marked; null where something is left to React. */
function choicesOf(part: Part, chosen: unknown): string | null {
  if (Array.isArray(part)) {
    const all = part.map((one) => choicesOf(one, chosen));
    return all.includes(null) ? null : all.join('');
  }
  if (!(part instanceof Written) || part.element.type !== 'option') return part === '' ? '' : null;
  const { value } = part.element.props;
  const isChosen = (value === undefined ? part.content : value) === chosen;
  return `<option${part.attributes}${isChosen ? ' selected=""' : ''}>${part.content}</option>`;
}

/** A link as the anchor that it comes to, marked to be followed without loading the page anew. */
function asAnchor({ props, key }: ReactElement<Props>): ReactElement<Props> {
  const { prefetch: _, ...rest } = props;
  return createElement('a', { ...rest, [FOLLOWED]: '', ...(key !== null && { key }) });
}

/** Null where something is left to React. */
function markupOf(part: Part): string | null {
  if (typeof part === 'string') return escaped(part);
  if (part instanceof Written) return part.markup;
  if (!Array.isArray(part)) return null;
  let all = '';
  for (const one of part) {
    const markup = markupOf(one);
    if (markup === null) return null;
    all += markup;
  }
  return all;
}

function nodeOf(part: Part): ReactNode {
  if (typeof part === 'string') return part;
  if (part instanceof Written) return part.node;
  return Array.isArray(part) ? part.map(nodeOf) : part.left;
}

function withMarkup(element: ReactElement<Props>, content: string, key = element.key): ReactNode {
  const { children: _, ...rest } = element.props;
  const html = { dangerouslySetInnerHTML: { __html: content } };
  return createElement(element.type, { ...rest, ...html, ...(key !== null && { key }) });
}

function withChildren(element: ReactElement<Props>, part: Part): ReactNode {
  const children = nodeOf(part);
  return Array.isArray(children)
    ? cloneElement(element, {}, ...(children as ReactNode[]))
    : cloneElement(element, {}, children);
}

function keyed(part: Part, key: string): Part {
  if (part instanceof Written) return new Written(part.element, part.attributes, part.content, key);
  if (typeof part === 'string' || Array.isArray(part) || !isValidElement(part.left)) return part;
  return { left: cloneElement(part.left, { key }) };
}

/** A promise only where something has to be awaited: there are thousands of elements on a page. */
const then = <Value, Result>(value: Soon<Value>, next: (value: Value) => Result): Soon<Result> =>
  value instanceof Promise ? value.then(next) : next(value);

function together(parts: Soon<Part>[]): Soon<Part[]> {
  const now = parts.filter((part): part is Part => !(part instanceof Promise));
  return now.length === parts.length ? now : Promise.all(parts.map((part) => Promise.resolve(part)));
}

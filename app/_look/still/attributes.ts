/** Names that markup writes otherwise than React does; all others are written as they stand. */
const NAMES: Readonly<Record<string, string>> = {
  className: 'class',
  htmlFor: 'for',
  acceptCharset: 'accept-charset',
  dominantBaseline: 'dominant-baseline',
  fillOpacity: 'fill-opacity',
  fontSize: 'font-size',
  fontWeight: 'font-weight',
  markerEnd: 'marker-end',
  markerStart: 'marker-start',
  paintOrder: 'paint-order',
  strokeDasharray: 'stroke-dasharray',
  strokeLinecap: 'stroke-linecap',
  strokeLinejoin: 'stroke-linejoin',
  strokeOpacity: 'stroke-opacity',
  strokeWidth: 'stroke-width',
  tabIndex: 'tabindex',
  textAnchor: 'text-anchor',
  vectorEffect: 'vector-effect',
};

/** Those that stand without a value, or not at all. */
const WITHOUT_VALUE = new Set(
  'checked disabled download formNoValidate hidden inert multiple noValidate open readOnly required reversed'.split(
    ' ',
  ),
);
/** Those of which yes and no are words. */
const IN_WORDS = /^(?:aria-|data-|draggable$|spellCheck$)/;

/** What React writes itself, or what markup has no word for. */
const NO_ATTRIBUTE = new Set(['children', 'key', 'ref']);

/** Controls, of which React writes these last, in this order; the first two of each pair are what they begin with. */
const LAST: Readonly<Record<string, readonly string[]>> = {
  button: ['formAction', 'formMethod', 'name'],
  form: ['action', 'encType', 'method'],
  input: ['formAction', 'formMethod', 'name', 'defaultChecked', 'checked', 'defaultValue', 'value'],
};
const BEGINS_WITH: Readonly<Record<string, string>> = { defaultChecked: 'checked', defaultValue: 'value' };

/**
 * The attributes of an element as React would write them, each with a blank before it; null where they hold something
 * that only React can give to an element: a style, markup, a function, the focus.
 */
export function attributes(tag: string, props: Readonly<Record<string, unknown>>): string | null {
  const last = LAST[tag] ?? NONE;
  let text = '';
  for (const name in props) {
    if (NO_ATTRIBUTE.has(name) || last.includes(name)) continue;
    const one = attribute(name, props[name]);
    if (one === null) return null;
    text += one;
  }
  for (const name of last) {
    const one = attribute(BEGINS_WITH[name] ?? name, props[name]);
    if (one === null) return null;
    text += one;
  }
  return text;
}

const NONE: readonly string[] = [];

function attribute(name: string, value: unknown): string | null {
  if (value === null || value === undefined) return '';
  if (typeof value === 'boolean' && !IN_WORDS.test(name)) {
    if (!value) return '';
    return WITHOUT_VALUE.has(name) ? ` ${name}=""` : null;
  }
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? ` ${NAMES[name] ?? name}="${escaped(String(value))}"`
    : null;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#x27;',
};

/** Text within markup, or within the quotes of an attribute. */
export const escaped = (text: string): string =>
  /["'&<>]/.test(text) ? text.replaceAll(/["'&<>]/g, (character) => ENTITIES[character] ?? '') : text;

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
  textAnchor: 'text-anchor',
  vectorEffect: 'vector-effect',
};

/** Those that stand without a value, or not at all. */
const WITHOUT_VALUE = new Set(['disabled', 'hidden', 'inert', 'open', 'reversed']);
/** Those of which yes and no are words. */
const IN_WORDS = /^(?:aria-|data-|draggable$|spellCheck$)/;

/** What React writes itself, or what markup has no word for. */
const NO_ATTRIBUTE = new Set(['children', 'key', 'ref']);

/**
 * The attributes of an element as React would write them, each with a blank before it; null where they hold something
 * that only React can give to an element: a style, markup, a function.
 */
export function attributes(props: Readonly<Record<string, unknown>>): string | null {
  let text = '';
  for (const name in props) {
    const value = props[name];
    if (value === null || value === undefined || NO_ATTRIBUTE.has(name)) continue;
    if (typeof value === 'boolean' && !IN_WORDS.test(name)) {
      if (!value) continue;
      if (!WITHOUT_VALUE.has(name)) return null;
      text += ` ${name}=""`;
    } else if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') {
      text += ` ${NAMES[name] ?? name}="${escaped(String(value))}"`;
    } else return null;
  }
  return text;
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

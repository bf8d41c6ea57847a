import { createHash } from 'node:crypto';
import type { ReactNode } from 'react';
import { speech } from '@/app/_words/speech';

/** What one component comes to takes no more than this of what is kept, characters. */
const MOST = 24_000_000;

/** What JSON says in full: of two things that differ it says two things. */
type Plain<Value> = Value extends string | number | boolean | null | undefined
  ? Value
  : Value extends
        | ((...args: never[]) => unknown)
        | symbol
        | bigint
        | Date
        | ReadonlyMap<unknown, unknown>
        | ReadonlySet<unknown>
    ? never
    : { [Key in keyof Value]: Plain<Value[Key]> };

const ONCE = Symbol('drawn once');
type Named = { [ONCE]?: string };
let named = 0;

/**
 * A component whose drawing `still` keeps: given the same again, in the same language and units, it is not drawn anew.
 * So it must be drawn from what it is given, and from the words, alone: it may ask nothing else.
 */
export function drawnOnce<Props extends object>(
  component: (props: Props & Plain<Props>) => ReactNode,
): (props: Props) => ReactNode {
  return Object.assign((props: Props) => component(props as Props & Plain<Props>), { [ONCE]: `${++named}` });
}

/** Names a drawing by its component and all that it is drawn from; null where it is not to be kept. */
export function drawingName(component: (props: never) => ReactNode, props: object): string | null {
  const name = (component as Named)[ONCE];
  if (name === undefined) return null;
  const { language, units } = speech();
  return `${name} ${language} ${units} ${Object.entries(props).map(said).join(' ')}`;
}

/** Of documents that are stored: they come to pages as the same frozen object for as long as they are unchanged. */
const digests = new WeakMap<object, string>();

function said([prop, value]: [string, unknown]): string {
  if (typeof value !== 'object' || value === null) return `${prop}=${JSON.stringify(value)}`;
  const frozen = Object.isFrozen(value);
  const digest =
    (frozen ? digests.get(value) : undefined) ??
    createHash('sha256').update(JSON.stringify(value)).digest('base64');
  if (frozen) digests.set(value, digest);
  return `${prop}:${digest}`;
}

/** Drawings by name, the least lately used of which is forgotten first. */
export class Drawings<Drawing> {
  readonly #kept = new Map<string, { drawing: Drawing; size: number }>();
  #size = 0;

  /** @param sizeOf characters that a drawing takes */
  constructor(private readonly sizeOf: (drawing: Drawing) => number) {}

  of(name: string, draw: () => Drawing | Promise<Drawing>): Drawing | Promise<Drawing> {
    const known = this.#kept.get(name);
    if (known !== undefined) {
      this.#kept.delete(name);
      this.#kept.set(name, known);
      return known.drawing;
    }
    const drawing = draw();
    return drawing instanceof Promise
      ? drawing.then((found) => this.#keep(name, found))
      : this.#keep(name, drawing);
  }

  #keep(name: string, drawing: Drawing): Drawing {
    if (this.#kept.has(name)) return drawing;
    const size = this.sizeOf(drawing) + name.length;
    this.#kept.set(name, { drawing, size });
    this.#size += size;
    for (const [oldest, { size: gone }] of this.#kept) {
      if (this.#size <= MOST) break;
      this.#kept.delete(oldest);
      this.#size -= gone;
    }
    return drawing;
  }
}

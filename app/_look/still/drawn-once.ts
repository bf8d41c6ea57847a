import { createHash } from 'node:crypto';
import type { ReactNode } from 'react';
import { speech } from '@/app/_words/speech';

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

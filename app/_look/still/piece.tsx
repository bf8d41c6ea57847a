'use client';

import { Component, createElement, createRef, type ReactNode } from 'react';
import { drawnForPiece } from './pieces';

/** On an element of a page that was sent as a whole: which of its pieces this is. */
const MARK = 'data-piece';

interface PieceProps {
  as: string;
  /** The attributes of the element, as React names them. */
  own: Readonly<Record<string, unknown>>;
  /** Which piece of the page that the browser opened. */
  piece?: number;
  /** What is in it; of a page that was sent as a whole the browser has that before its eyes. */
  markup?: string;
}

/**
 * An element whose content is markup. When the content changes, the link or control that had the focus keeps it, as
 * it would have if React had changed what is around it.
 */
export class Piece extends Component<PieceProps> {
  readonly #element = createRef<HTMLElement>();
  readonly #sent = this.props.piece === undefined ? '' : sent(this.props.piece);

  override getSnapshotBeforeUpdate({ markup }: PieceProps): Place | null {
    return markup === this.props.markup ? null : placeOfFocus(this.#element.current);
  }

  override componentDidUpdate(_: PieceProps, __: unknown, place: Place | null): void {
    const found = place?.path.reduce<Element | undefined>(
      (at, index) => at?.children[index],
      this.#element.current ?? undefined,
    );
    if (found instanceof HTMLElement && found.tagName === place?.tag) found.focus({ preventScroll: true });
  }

  override render(): ReactNode {
    const { as, own, piece, markup } = this.props;
    return createElement(as, {
      ...own,
      [MARK]: piece,
      ref: this.#element,
      dangerouslySetInnerHTML: { __html: markup ?? this.#sent },
      suppressHydrationWarning: true,
    });
  }
}

/** Whether a piece was looked for that the page does not hold: it could not be made, and has to be asked for. */
export const missing = { any: false };

/** Read off the page once for each piece: React may make it anew, as when the reader comes back. */
const read = new Map<number, string>();

function sent(piece: number): string {
  const made = drawnForPiece(piece) ?? read.get(piece);
  if (made !== undefined || typeof document === 'undefined') return made ?? '';
  const found = document.querySelector(`[${MARK}="${piece}"]`);
  if (found === null) missing.any = true;
  else read.set(piece, found.innerHTML);
  return found?.innerHTML ?? '';
}

/** Where in an element something stands: which child of which child. */
interface Place {
  path: number[];
  tag: string;
}

function placeOfFocus(within: Element | null): Place | null {
  const focused = document.activeElement;
  if (within === null || focused === null || focused === within || !within.contains(focused)) return null;
  const path: number[] = [];
  for (let at = focused; at !== within && at.parentElement !== null; at = at.parentElement)
    path.unshift([...at.parentElement.children].indexOf(at));
  return { path, tag: focused.tagName };
}

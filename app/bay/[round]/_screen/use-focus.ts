import { useEffect, useRef, type RefObject } from 'react';

/** Typing elsewhere on the page is not to be interrupted. */
const isElsewhere = (): boolean => {
  const active = document.activeElement;
  return active instanceof HTMLElement && active.closest('[data-typing]') !== null;
};

/** Puts the focus on what is to be done, each time that something else is to be done. */
export function useFocus<Control extends HTMLElement>(what: string): RefObject<Control | null> {
  const control = useRef<Control>(null);
  useEffect(() => {
    if (isElsewhere()) return;
    control.current?.focus();
    // It may have the focus already, and have been moved by what was caught above it.
    control.current?.scrollIntoView({ block: 'nearest' });
  }, [what]);
  return control;
}

/** Back to what is to be done, from a form beside it. The control carries `data-first`. */
export function backToNow(): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>('#now [data-first]')?.focus());
}

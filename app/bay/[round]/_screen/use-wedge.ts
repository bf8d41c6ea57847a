import { useRef, type KeyboardEvent } from 'react';

/** Nobody types faster than this from key to key, ms; a gauge that sends its value as a keyboard does. */
const FASTEST_HAND = 40;
/** The fewest keys that show it. */
const LEAST = 3;

/**
 * Tells a digital gauge's value from typing, by its speed: Tab after it keeps the value, as Enter does. Tab after what
 * was typed by hand goes on to the next control.
 */
export function useWedge(keep: () => void): (event: KeyboardEvent<HTMLInputElement>) => void {
  const times = useRef<number[]>([]);
  return (event) => {
    const fast = times.current.every((time, at) => time - (times.current[at - 1] ?? time) < FASTEST_HAND);
    if (event.key === 'Tab' && !event.shiftKey && times.current.length >= LEAST && fast) {
      const last = times.current.at(-1) ?? 0;
      if (event.timeStamp - last < FASTEST_HAND) {
        event.preventDefault();
        keep();
      }
    }
    if (event.key.length === 1) times.current = [...times.current, event.timeStamp].slice(-20);
    else times.current = [];
  };
}

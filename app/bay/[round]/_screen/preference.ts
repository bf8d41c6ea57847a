import { useSyncExternalStore } from 'react';

const watchers = new Set<() => void>();

function watch(watcher: () => void): () => void {
  watchers.add(watcher);
  window.addEventListener('storage', watcher);
  return () => {
    watchers.delete(watcher);
    window.removeEventListener('storage', watcher);
  };
}

function read(name: string): string {
  try {
    return localStorage.getItem(`bay.${name}`) ?? '';
  } catch {
    return '';
  }
}

/** Keeps a choice on this device; where the browser keeps nothing it is forgotten. */
export function prefer(name: string, value: string): void {
  try {
    localStorage.setItem(`bay.${name}`, value);
  } catch {
    // It holds for no longer than this.
  }
  for (const watcher of watchers) watcher();
}

/** A choice that is kept on this device, in all its tabs; empty until one was made. */
export const usePreference = (name: string): string =>
  useSyncExternalStore(
    watch,
    () => read(name),
    () => '',
  );

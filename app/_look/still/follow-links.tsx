'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';
import { FOLLOWED } from './followed';
import { missing } from './piece';

/** Follows links that are written as markup as the framework follows its own: without loading the page anew. */
export function FollowLinks() {
  const router = useRouter();
  useEffect(() => {
    if (missing.any) router.refresh();
  }, [router]);
  useEffect(() => {
    const follow = (event: MouseEvent) => {
      const elsewhere =
        event.metaKey || event.ctrlKey || event.shiftKey || event.altKey || event.button !== 0;
      if (elsewhere || event.defaultPrevented || !(event.target instanceof Element)) return;
      const href = event.target.closest(`a[${FOLLOWED}]`)?.getAttribute('href');
      if (href === null || href === undefined) return;
      event.preventDefault();
      router.push(href);
    };
    document.addEventListener('click', follow);
    return () => document.removeEventListener('click', follow);
  }, [router]);
  return null;
}

'use client';

import { usePathname } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import { classNames } from './class-names';
import styles from './navigation.module.css';
import { escaped } from './still/attributes';
import { FOLLOWED } from './still/followed';

/** More than these do not fit beside the name of the program and of the reader, and have a line of their own. */
const FEW = 8;

type Pages = readonly (readonly [href: string, name: string])[];

/**
 * The pages at the head of each. They are written as markup, as what stays on a page is; where the reader stands is
 * marked by the server, and afterwards, since this part stays when the page changes, by the browser.
 */
export function Navigation({ name, pages }: { name: string; pages: Pages }) {
  const path = usePathname();
  const list = useRef<HTMLUListElement>(null);
  const [markup] = useState(() => pages.map((page) => itemOf(page, path)).join(''));
  useEffect(() => {
    for (const link of list.current?.querySelectorAll('a') ?? []) {
      const stands = standsOn(path, link.getAttribute('href') ?? '');
      if (stands === undefined) link.removeAttribute('aria-current');
      else link.setAttribute('aria-current', stands);
    }
  }, [path]);
  return (
    <nav
      className={classNames(styles.navigation, pages.length > FEW && styles.many)}
      aria-label={name}
      data-print="no"
    >
      <ul data-plain ref={list} dangerouslySetInnerHTML={{ __html: markup }} />
    </nav>
  );
}

function itemOf([href, page]: Pages[number], path: string): string {
  const stands = standsOn(path, href);
  const current = stands === undefined ? '' : ` aria-current="${stands}"`;
  return `<li><a${current} href="${escaped(href)}" ${FOLLOWED}="">${escaped(page)}</a></li>`;
}

/** Pages that are reached from another one only: there the reader stands below that one. */
const BELOW: Readonly<Record<string, string>> = { '/what-if': '/rates' };

function standsOn(path: string, href: string): 'page' | 'true' | undefined {
  if (path === href) return 'page';
  if (BELOW[path] === href) return 'true';
  return href !== '/' && path.startsWith(`${href}/`) ? 'true' : undefined;
}

'use client';

import button from './_look/button.module.css';
import { PageFrame } from './_look/page-frame';
import de from './_words/catalogue/de/no-page.json';
import en from './_words/catalogue/en/no-page.json';

interface ErrorPageProps {
  error: Error & { digest?: string };
  retry: () => void;
}

/** A page that failed hands no words on: this one brings its few in both languages. */
const WORDS = { de: de.failed, en: en.failed };

/** Shown where a page could not be worked out; nothing that was measured is lost by that. */
export default function ErrorPage({ error, retry }: ErrorPageProps) {
  const t = WORDS[document.documentElement.lang === 'de' ? 'de' : 'en'];
  return (
    <PageFrame title={t.title} lead={t.lead}>
      {error.digest !== undefined && (
        <p>
          {t.reference} <code>{error.digest}</code>
        </p>
      )}
      <p>
        <button type="button" className={button.strong} onClick={retry}>
          {t.again}
        </button>
      </p>
    </PageFrame>
  );
}

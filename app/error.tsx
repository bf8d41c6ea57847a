'use client';

import button from './_look/button.module.css';
import { Page } from './_look/page';

interface ErrorPageProps {
  error: Error & { digest?: string };
  retry: () => void;
}

/** Shown where a page could not be worked out; nothing that was measured is lost by that. */
export default function ErrorPage({ error, retry }: ErrorPageProps) {
  return (
    <Page
      title="This page could not be worked out"
      lead="Opening a page changes no measurement. Try again; if it fails again, the window in which Rehang was started says why, under the reference below."
    >
      {error.digest !== undefined && (
        <p>
          Reference: <code>{error.digest}</code>
        </p>
      )}
      <p>
        <button type="button" className={button.strong} onClick={retry}>
          Try again
        </button>
      </p>
    </Page>
  );
}

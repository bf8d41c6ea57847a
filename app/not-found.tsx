import type { Metadata } from 'next';
import Link from 'next/link';
import button from './_look/button.module.css';
import { Page } from './_look/page';

export const metadata: Metadata = { title: 'Not here' };

export default function NotFound() {
  return (
    <Page
      title="There is no such page"
      lead="Nothing of this name is stored in this shop. A job, technician or gauge is found by its exact label."
    >
      <p>
        <Link className={button.button} href="/jobs">
          Find it among the jobs
        </Link>
      </p>
    </Page>
  );
}

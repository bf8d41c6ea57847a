import type { Metadata } from 'next';
import Link from 'next/link';
import button from './_look/button.module.css';
import { Page } from './_look/page';

export const metadata: Metadata = { title: 'Not for this role' };

export default function Forbidden() {
  return (
    <Page
      title="This page is not for your role"
      lead="What somebody may see in a shop is decided by its manager: technicians have the own figures and rounds, trainers everybody’s, the manager all."
    >
      <p>
        <Link className={button.button} href="/">
          Back to where you may go
        </Link>
      </p>
    </Page>
  );
}

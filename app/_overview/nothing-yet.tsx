import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Empty } from '@/app/_look/empty';
import { Page } from '@/app/_look/page';

export function NothingYet({ title }: { title: string }) {
  return (
    <Page
      title={title}
      lead="How repeatable each hand is, whether the gauge or the body moved, and how often a repair is right the first time."
    >
      <Empty
        title="No measurement is here yet"
        action={
          <Link className={button.strong} href="/load">
            Load a measurement file
          </Link>
        }
      >
        <p>
          Load what the shop has measured: one reading a line, as a spreadsheet saves it. With the first file
          the pages show how often a repair was right the first time, whose hand and which gauge is how far
          off, and what to re-check next.
        </p>
      </Empty>
    </Page>
  );
}

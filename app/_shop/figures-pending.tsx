import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';

/** Stands in for figures that the first learning run has not finished yet. */
export function FiguresPending({ title }: { title: string }) {
  return (
    <Page title={title}>
      <Note live>
        <p>
          The figures are being worked out from the readings for the first time. Reload the page in a minute.
        </p>
      </Note>
    </Page>
  );
}

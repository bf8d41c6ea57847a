import { Page } from '@/app/_look/page';
import { FiguresAge } from './figures-age';

/** Stands in for a page of figures before the first of them are worked out. */
export function FiguresPending({ title }: { title: string }) {
  return (
    <Page title={title}>
      <FiguresAge fit={null} timeZone="UTC" />
    </Page>
  );
}

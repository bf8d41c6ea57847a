import Link from 'next/link';
import { Empty } from '@/app/_look/empty';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { Page } from '@/app/_look/page';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { EstimatesOfAll, RatesOfAll } from '../_parts/all-hands';
import { countOutcomes, everybodysFigures, listPeople } from '@/lib/access';
import { enter } from '@/app/_shop/enter';

export const generateMetadata = titled(() => words('technicians')('title'));

export default async function Technicians() {
  const viewer = await enter();
  const t = words('technicians');
  const { shop } = viewer;
  const [people, figures, rates, whole] = await Promise.all([
    listPeople(viewer),
    everybodysFigures(viewer),
    countOutcomes(viewer, 'technician'),
    countOutcomes(viewer, 'shop'),
  ]);
  if (people.length === 0) {
    return (
      <Page title={t('title')}>
        <Empty title={t('none.title')} action={<Link href="/load">{t('none.load')}</Link>}>
          <p>{t('none.text')}</p>
        </Empty>
      </Page>
    );
  }
  if (figures === null) return <FiguresPending title={t('title')} />;
  return (
    <Page title={t('title')} lead={t('lead')}>
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <EstimatesOfAll figures={figures.figures} />
      <RatesOfAll rates={rates} whole={whole} />
    </Page>
  );
}

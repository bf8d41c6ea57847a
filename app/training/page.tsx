import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Page } from '@/app/_look/page';
import { ExcludedNote } from '@/app/_shop/excluded-note';
import { FiguresAge } from '@/app/_shop/figures-age';
import { FiguresPending } from '@/app/_shop/figures-pending';
import { NothingYet } from '@/app/_overview/nothing-yet';
import { countJobs, everybodysFigures, habitsAnswer, signalsAnswer } from '@/lib/access';
import { enter } from '@/app/_shop/enter';
import { Changes } from './_parts/changes';
import { Hands } from './_parts/hands';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('training')('title'));

export default async function Training() {
  const viewer = await enter();
  const { shop } = viewer;
  const t = words('training');
  const [figures, habits, signals, jobs] = await Promise.all([
    everybodysFigures(viewer),
    habitsAnswer(viewer),
    signalsAnswer(viewer),
    countJobs(viewer),
  ]);
  if (jobs === 0) return <NothingYet title={t('title')} />;
  if (figures === null) return <FiguresPending title={t('title')} />;
  return (
    <Page
      title={t('title')}
      lead={t('lead')}
      actions={
        <>
          <Link className={button.strong} href="/habits">
            {t('habitsLink')}
          </Link>
          <Link className={button.button} href="/trials" prefetch={false}>
            {t('trialsLink')}
          </Link>
        </>
      }
    >
      <FiguresAge fit={figures} timeZone={shop.timeZone} />
      <ExcludedNote viewer={viewer} />
      <Changes answer={signals} />
      <Hands figures={figures.figures} habits={habits} />
    </Page>
  );
}

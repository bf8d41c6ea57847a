import type { Metadata } from 'next';
import Link from 'next/link';
import { Page } from '@/app/_look/page';
import { enter } from '@/app/_shop/enter';
import { WordsOnDevice } from '@/app/_words/on-device';
import { hear } from '@/app/_words/speech';
import { words } from '@/app/_words/words';
import Helper from '../_helper/helper';
import { StayThere } from '../_parts/stay-there';

export async function generateMetadata(): Promise<Metadata> {
  await hear();
  return { title: words('bay')('helper.title') };
}

/** The setting helper by itself. */
export default async function HelperPage() {
  await enter();
  const t = words('bay');
  return (
    <Page above={<Link href="/bay">{t('title')}</Link>} title={t('helper.title')} lead={t('helper.lead')}>
      <WordsOnDevice parts={['bay']}>
        <Helper clearance={null} />
        <StayThere />
      </WordsOnDevice>
    </Page>
  );
}

import Link from 'next/link';
import button from '@/app/_look/button.module.css';
import { Empty } from '@/app/_look/empty';
import { Page } from '@/app/_look/page';
import { words } from '@/app/_words/words';

export function NothingYet({ title }: { title: string }) {
  const t = words('overview');
  return (
    <Page title={title} lead={t('nothing.lead')}>
      <Empty
        title={t('nothing.title')}
        action={
          <Link className={button.strong} href="/load">
            {t('nothing.load')}
          </Link>
        }
      >
        <p>{t('nothing.text')}</p>
      </Empty>
    </Page>
  );
}

import Link from 'next/link';
import button from './_look/button.module.css';
import { PageAlone } from './_look/page';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { hear } from '@/app/_words/speech';

export const generateMetadata = titled(() => words('noPage')('missing.name'));

export default async function NotFound() {
  await hear();
  const t = words('noPage');
  return (
    <PageAlone title={t('missing.title')} lead={t('missing.lead')}>
      <p>
        <Link className={button.button} href="/jobs">
          {t('missing.toJobs')}
        </Link>
      </p>
    </PageAlone>
  );
}

import Link from 'next/link';
import { Panel } from '@/app/_look/panel';
import { words } from '@/app/_words/words';
import { cautions } from '@/app/_words/cautions';
import prose from '@/app/_look/prose.module.css';

export function JobCautions() {
  const t = words('jobs');
  return (
    <Panel id="cautions" title={t('cautions.title')}>
      <div className={prose.prose}>
        <ul>
          {cautions().map((caution) => (
            <li key={caution.title}>
              <b>{caution.title}.</b> {caution.text}
            </li>
          ))}
        </ul>
        <p data-print="no">
          <Link href="/method">{t('cautions.method')}</Link>
        </p>
      </div>
    </Panel>
  );
}

import { Page } from '@/app/_look/page';
import { cautions } from '@/app/_words/cautions';
import prose from '@/app/_look/prose.module.css';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { hear } from '@/app/_words/speech';

export const generateMetadata = titled(() => words('cautions')('title'));

export default async function Cautions() {
  await hear();
  const t = words('cautions');
  return (
    <Page title={t('title')} lead={t('lead')}>
      <div className={prose.prose}>
        {cautions().map((caution) => (
          <section key={caution.title}>
            <h2>{caution.title}</h2>
            <p>{caution.text}</p>
          </section>
        ))}
      </div>
    </Page>
  );
}

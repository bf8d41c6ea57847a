import type { Metadata } from 'next';
import { Page } from '@/app/_look/page';
import { CAUTIONS } from '@/app/_words/cautions';
import prose from '@/app/_look/prose.module.css';

export const metadata: Metadata = { title: 'Cautions' };

export default function Cautions() {
  return (
    <Page title="Cautions" lead="Read these before anything on these pages leads to an action on a vehicle.">
      <div className={prose.prose}>
        {CAUTIONS.map((caution) => (
          <section key={caution.title}>
            <h2>{caution.title}</h2>
            <p>{caution.text}</p>
          </section>
        ))}
      </div>
    </Page>
  );
}

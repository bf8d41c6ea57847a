import Link from 'next/link';
import { Panel } from '@/app/_look/panel';
import { cautions } from '@/app/_words/cautions';
import prose from '@/app/_look/prose.module.css';

export function JobCautions() {
  return (
    <Panel id="cautions" title="Before anything is done to this vehicle">
      <div className={prose.prose}>
        <ul>
          {cautions().map((caution) => (
            <li key={caution.title}>
              <b>{caution.title}.</b> {caution.text}
            </li>
          ))}
        </ul>
        <p data-print="no">
          <Link href="/method">How the verdicts are reached</Link>
        </p>
      </div>
    </Panel>
  );
}

import type { ReactNode } from 'react';
import prose from '@/app/_look/prose.module.css';
import { words } from '@/app/_words/words';

export function WhoMay() {
  const t = words('settings');
  const b = (chunks: ReactNode) => <b>{chunks}</b>;
  return (
    <div className={prose.prose}>
      <ul>
        <li>{t.rich('people.technicianMay', { b })}</li>
        <li>{t.rich('people.trainerMay', { b })}</li>
        <li>{t.rich('people.managerMay', { b })}</li>
      </ul>
    </div>
  );
}

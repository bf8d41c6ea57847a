import type { ReactNode } from 'react';
import styles from './field.module.css';

interface FieldProps {
  label: string;
  /** Id of the control inside. */
  id: string;
  children: ReactNode;
}

/** A control under its label. */
export function Field({ label, id, children }: FieldProps) {
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      {children}
    </div>
  );
}

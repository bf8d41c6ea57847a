import { useId } from 'react';
import styles from './helper.module.css';

interface LengthFieldProps {
  label: string;
  value: string;
  change: (value: string) => void;
}

/** A length as it is typed, in the reader's units. */
export function LengthField({ label, value, change }: LengthFieldProps) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        maxLength={40}
        value={value}
        onChange={(event) => change(event.target.value)}
      />
    </div>
  );
}

import type { ClipboardEvent } from 'react';

interface CellProps {
  name: string;
  label: string;
  value: string;
  /** Words to choose from, with what is shown; without them it is typed. */
  choices?: readonly (readonly [word: string, shown: string])[] | undefined;
  /** A yes or nothing. */
  tick?: boolean;
  numeric?: boolean;
  wrong: boolean;
  /** Id of the remarks on its row. */
  told: string | undefined;
  onChange: (value: string) => void;
  onPaste: (event: ClipboardEvent<HTMLElement>) => void;
}

/** One cell of the editor; every kind of it is a plain field of the form. */
export function Cell({
  name,
  label,
  value,
  choices,
  tick = false,
  numeric = false,
  wrong,
  told,
  onChange,
  onPaste,
}: CellProps) {
  const common = {
    name,
    'data-cell': '',
    'aria-label': label,
    'aria-invalid': wrong || undefined,
    'aria-describedby': told,
    onPaste,
  } as const;
  if (tick && (value === '' || value === 'yes'))
    return (
      <input
        {...common}
        type="checkbox"
        value="yes"
        checked={value === 'yes'}
        onChange={(event) => onChange(event.target.checked ? 'yes' : '')}
      />
    );
  if (choices !== undefined)
    return (
      <select {...common} value={value} onChange={(event) => onChange(event.target.value)}>
        {choices.some(([word]) => word === value) || <option value={value}>{value}</option>}
        {choices.map(([word, shown]) => (
          <option key={word} value={word}>
            {shown}
          </option>
        ))}
      </select>
    );
  return (
    <input
      {...common}
      value={value}
      inputMode={numeric ? 'decimal' : 'text'}
      maxLength={120}
      autoComplete="off"
      spellCheck={false}
      onChange={(event) => onChange(event.target.value)}
    />
  );
}

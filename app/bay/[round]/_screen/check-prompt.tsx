import { useState, type SubmitEvent } from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import type { EntryBody, EquipmentCheck } from '@/lib/bay';
import { useFocus } from './use-focus';
import styles from './prompt.module.css';

interface CheckPromptProps {
  check: EquipmentCheck;
  /** The thing to do in a sentence that is read from two metres; null in ordinary type. */
  headline: string | null;
  enter: (bodies: EntryBody[]) => Promise<void>;
}

/** What is looked at before the first gauge hangs: Enter says yes. */
export function CheckPrompt({ check, headline, enter }: CheckPromptProps) {
  const t = useTranslations('bay');
  const yes = useFocus<HTMLButtonElement>(check);
  const [wrong, setWrong] = useState<EquipmentCheck | null>(null);
  const [busy, setBusy] = useState(false);
  const answer = async (ok: boolean, note: string | null) => {
    setBusy(true);
    await enter([{ kind: 'equipment', check, ok, note }]);
    setBusy(false);
    setWrong(null);
  };
  const note = (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    const text = new FormData(event.currentTarget).get('note');
    void answer(false, typeof text === 'string' && text.trim() !== '' ? text.trim() : null);
  };

  return (
    <>
      <h2 className={styles.title}>{headline ?? t(`check.${check}.ask`)}</h2>
      {headline === null && <p className={styles.how}>{t(`check.${check}.how`)}</p>}
      {wrong === check ? (
        <form className={styles.fields} onSubmit={note}>
          <div className={styles.field}>
            <label htmlFor="check-note">{t('check.note')}</label>
            {/* It was asked for by a press on the button before it. */}
            {/* eslint-disable-next-line jsx-a11y/no-autofocus */}
            <input id="check-note" name="note" maxLength={500} autoComplete="off" autoFocus />
          </div>
          <button type="submit" className={button.strong} disabled={busy}>
            {t('check.keepNo')}
          </button>
        </form>
      ) : (
        <div className={styles.row}>
          <button
            ref={yes}
            data-first
            type="button"
            className={button.strong}
            aria-disabled={busy}
            onClick={() => void answer(true, null)}
          >
            {t('check.yes')}
          </button>
          <button type="button" className={button.button} onClick={() => setWrong(check)}>
            {t('check.no')}
          </button>
        </div>
      )}
    </>
  );
}

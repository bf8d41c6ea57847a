'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState, type DragEvent, type SubmitEvent } from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { classNames } from '@/app/_look/class-names';
import { decimal } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import type { Speech } from '@/app/_words/speech';
import { sendFile } from './send-file';
import styles from './upload-form.module.css';

type State =
  { step: 'choosing'; message: string | null } | { step: 'sending'; share: number } | { step: 'checking' };

/** A plain form that also takes a dropped file, and with scripts sends it piece by piece and says how far it is. */
export function UploadForm({ limit }: { limit: number }) {
  const t = useTranslations('upload');
  const speech = useSpeech();
  const router = useRouter();
  const input = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const [chosen, setChosen] = useState<string | null>(null);
  const [state, setState] = useState<State>({ step: 'choosing', message: null });

  async function submit(event: SubmitEvent) {
    event.preventDefault();
    const file = input.current?.files?.[0];
    if (file === undefined) {
      setState({ step: 'choosing', message: t('chooseFirst') });
      return;
    }
    if (file.size > limit) {
      setState({
        step: 'choosing',
        message: t('tooLarge', {
          name: file.name,
          size: megabytes(file.size, speech),
          limit: megabytes(limit, speech),
        }),
      });
      return;
    }
    setState({ step: 'sending', share: 0 });
    const answer = await sendFile(
      file,
      (share) => setState(share < 1 ? { step: 'sending', share } : { step: 'checking' }),
      { connectionBroke: t('connectionBroke'), notRead: t('notRead') },
    );
    if ('message' in answer) setState({ step: 'choosing', message: answer.message });
    else router.push(answer.at);
  }

  function drop(event: DragEvent) {
    event.preventDefault();
    setOver(false);
    if (input.current === null || event.dataTransfer.files.length === 0) return;
    input.current.files = event.dataTransfer.files;
    choose();
  }

  function choose() {
    const file = input.current?.files?.[0];
    setChosen(file === undefined ? null : `${file.name}, ${megabytes(file.size, speech)}`);
    setState({ step: 'choosing', message: null });
  }

  const busy = state.step !== 'choosing';
  return (
    <form
      className={classNames(styles.form, over && styles.over)}
      action="/load/upload"
      method="post"
      encType="multipart/form-data"
      onSubmit={(event) => void submit(event)}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <label className={styles.label} htmlFor="file">
        {t('label')}
      </label>
      <p className={styles.hint} id="file-hint">
        {t('hint', { limit: megabytes(limit, speech) })} <span data-needs-script>{t('drop')}</span>
      </p>
      <input
        ref={input}
        id="file"
        className={styles.input}
        name="file"
        type="file"
        accept=".csv,.tsv,.txt,text/csv,text/plain"
        aria-describedby="file-hint"
        onChange={choose}
        disabled={busy}
      />
      <button type="submit" className={button.strong} disabled={busy}>
        {t('check')}
      </button>
      <div role="status" className={styles.status}>
        {state.step === 'choosing' && state.message === null && chosen !== null && (
          <p>{t('chosen', { file: chosen })}</p>
        )}
        {state.step === 'choosing' && state.message !== null && (
          <p className={styles.fault}>{state.message}</p>
        )}
        {state.step === 'sending' && <p>{t('sending', { percent: Math.floor(state.share * 10) * 10 })}</p>}
        {state.step === 'checking' && <p>{t('reading')}</p>}
      </div>
      {busy && (
        <progress
          className={styles.progress}
          aria-label={t('howFar')}
          max={1}
          value={state.step === 'sending' ? state.share : undefined}
        />
      )}
    </form>
  );
}

function megabytes(bytes: number, to: Speech): string {
  return bytes < 1e5
    ? `${Math.max(1, Math.round(bytes / 1e3))}\u00a0kB`
    : `${decimal(bytes / 1e6, bytes < 1e7 ? 1 : 0, to)}\u00a0MB`;
}

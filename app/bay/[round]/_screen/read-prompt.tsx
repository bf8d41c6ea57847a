import {
  useEffect,
  useRef,
  useState,
  type KeyboardEvent,
  type SubmitEvent,
  type ClipboardEvent,
} from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { bareMillimetres, unit } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import { targetsOf, type BayHead, type Place, type Prompt, type Target } from '@/lib/bay';
import { Points } from './hang-prompt';
import { typedFor } from './enter-reading';
import { dimensionText, placeName, promptKey, settingText } from './names';
import { useFocus } from './use-focus';
import { useWedge } from './use-wedge';
import styles from './prompt.module.css';

type ReadPromptOf = Extract<Prompt, { do: 'read' }>;

interface ReadPromptProps {
  prompt: ReadPromptOf;
  head: BayHead;
  headline: string | null;
  /** What a tracking gauge can read in the same go. */
  also: Place | null;
  ready: boolean;
  /** Where the gauge comes with the number: another one can be chosen first. */
  otherGauge: (() => void) | null;
  /** Told while something stands in the field, so that nothing is put in its place. */
  typing: (yes: boolean) => void;
  /** @returns false where nothing could be kept. */
  keep: (prompt: ReadPromptOf, targets: Target[], values: number[]) => Promise<boolean>;
}

function turnSign(input: HTMLInputElement): void {
  const text = input.value.trim().replace(/^\+/, '');
  input.value = /^[-−]/.test(text) ? text.slice(1) : `-${text}`;
}

/** A number and Enter. The field stays the same from reading to reading, so that a tablet keeps its keypad open. */
export function ReadPrompt({
  prompt,
  head,
  headline,
  also,
  ready,
  otherGauge,
  typing,
  keep,
}: ReadPromptProps) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const field = useFocus<HTMLInputElement>(promptKey(prompt));
  const form = useRef<HTMLFormElement>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [asked, setAsked] = useState<string | null>(null);
  const busy = useRef(false);
  const wedge = useWedge(() => form.current?.requestSubmit());
  const { place, setup, dimension, blind } = prompt;
  const targets = targetsOf(prompt, also);
  const second = targets.find((one) => one.place.key !== place.key);

  // A gauge that sends its value as a keyboard does so wherever the focus is.
  useEffect(() => {
    const toField = (event: globalThis.KeyboardEvent) => {
      const active = document.activeElement;
      const nowhere = active === null || active === document.body || active.id === 'main';
      if (nowhere && /^[\d.,+−-]$/.test(event.key)) field.current?.focus();
    };
    document.addEventListener('keydown', toField);
    return () => document.removeEventListener('keydown', toField);
  }, [field]);

  const submit = async (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    const input = field.current;
    if (input === null || busy.current) return;
    const text = input.value;
    const typed = typedFor(text, targets, {
      units: to.units,
      clearance: head.clearance,
      sure: asked === text,
    });
    setAsked(null);
    if (typed.is === 'none')
      return setFault(
        t('read.none', { example: bareMillimetres(to.units === 'mm' ? 307.5 : 309.5625, 1, to) }),
      );
    if (typed.is === 'too-many')
      return setFault(t('read.tooMany', { given: typed.given, wanted: targets.length }));
    if (typed.is === 'far') {
      setAsked(text);
      return setFault(t('read.far', { value: settingText(typed.value, to) }));
    }
    busy.current = true;
    const kept = await keep(prompt, targets, typed.values);
    busy.current = false;
    setFault(kept ? null : t('read.failed'));
    if (!kept) return;
    form.current?.reset();
    typing(false);
    input.focus();
  };

  const turn = () => {
    const input = field.current;
    if (input === null) return;
    turnSign(input);
    typing(true);
    input.focus();
  };

  const paste = (event: ClipboardEvent<HTMLInputElement>) => {
    const text = event.clipboardData.getData('text');
    // A gauge's program ends what it pastes as it ends what it types.
    if (!/[\n\t]\s*$/.test(text) || event.currentTarget.value !== '') return;
    event.preventDefault();
    event.currentTarget.value = text.trim().replace(/\s+/g, ' ');
    form.current?.requestSubmit();
  };

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => wedge(event);
  const twoNames = second !== undefined && { first: nameOf(targets[0]), second: nameOf(second) };

  return (
    <>
      <h2 className={styles.title}>{headline ?? t('read.title', { name: dimensionText(t, dimension) })}</h2>
      {blind && <p className={styles.how}>{t('read.second')}</p>}
      {headline === null && <Points place={place} />}
      {otherGauge !== null && (
        <p className={styles.with}>
          {t('read.with', { gauge: setup.gauge, kind: t(`kinds.${setup.gaugeKind}`) })}
          <button type="button" onClick={otherGauge}>
            {t('read.otherGauge')}
          </button>
        </p>
      )}
      {setup.gaugeKind === 'tape' && <p className={styles.where}>{t('hang.tape')}</p>}
      {second !== undefined && (
        <p className={styles.how}>{t('read.and', { name: placeName(second.place) })}</p>
      )}
      <form ref={form} className={styles.entry} onSubmit={(event) => void submit(event)} noValidate>
        <div className={styles.field}>
          <label htmlFor="reading">
            {twoNames
              ? t('read.fieldTwo', { unit: unit(to), ...twoNames })
              : t('read.field', { unit: unit(to) })}
          </label>
          <input
            ref={field}
            data-first
            id="reading"
            name="reading"
            inputMode={second === undefined ? 'decimal' : 'text'}
            enterKeyHint="done"
            autoComplete="off"
            maxLength={80}
            aria-invalid={fault !== null}
            aria-describedby="reading-fault"
            onKeyDown={onKeyDown}
            onPaste={paste}
            onChange={(event) => {
              typing(event.target.value.trim() !== '');
              if (fault !== null) setFault(null);
            }}
          />
        </div>
        {dimension.quantity === 'centerline' && (
          <button type="button" className={button.button} onClick={turn} aria-label={t('read.sign')}>
            ±
          </button>
        )}
        <button type="submit" className={button.strong} disabled={!ready}>
          {t('read.keep')}
        </button>
      </form>
      <p id="reading-fault" role="alert" className={styles.fault}>
        {fault}
      </p>
    </>
  );

  function nameOf(target: Target | undefined): string {
    return target === undefined ? '' : dimensionText(t, target.dimension);
  }
}

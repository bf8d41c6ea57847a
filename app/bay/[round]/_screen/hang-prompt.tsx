import { useState, type SubmitEvent } from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { settingOf, type BayHead, type EntryBody, type Place, type Prompt } from '@/lib/bay';
import { useSpeech } from '@/app/_words/speech/device';
import type { Standing } from '@/app/bay/_device/standing';
import { placeName, settingsOf, settingText, dimensionText } from './names';
import { hangBodies } from './enter-hanging';
import { useFocus } from './use-focus';
import styles from './prompt.module.css';
import type { GaugeChoice } from './gauge-choices';

interface HangPromptProps {
  prompt: Extract<Prompt, { do: 'hang' }>;
  head: BayHead;
  headline: string | null;
  /** True where somebody asked to hang it again. */
  asked: boolean;
  choices: GaugeChoice[];
  me: string;
  hands: readonly string[];
  hang: (make: (standing: Standing) => EntryBody[], gauge: string) => Promise<void>;
  stay: () => void;
}

/** Set, hang, Enter: the gauge that hung here last is chosen already. */
export function HangPrompt({
  prompt,
  head,
  headline,
  asked,
  choices,
  me,
  hands,
  hang,
  stay,
}: HangPromptProps) {
  const t = useTranslations('bay');
  const { place, again } = prompt;
  const isLength = place.dimensions[0]?.quantity === 'length';
  const usable = choices.filter(({ usable: yes }) => yes);
  const [chosen, setChosen] = useState<string | null>(null);
  const tag = usable.find((one) => one.tag === chosen)?.tag ?? usable[0]?.tag ?? null;
  const gauge = usable.find((one) => one.tag === tag) ?? null;
  const first = useFocus<HTMLInputElement>(`${place.key} ${again ?? ''} ${asked}`);
  const [busy, setBusy] = useState(false);

  const submit = async (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (gauge?.kind == null || busy) return;
    const hand = new FormData(event.currentTarget).get('hand');
    setBusy(true);
    await hang(
      hangBodies(prompt, asked, {
        gauge: gauge.tag,
        gaugeKind: gauge.kind,
        hand: typeof hand === 'string' && hand !== me ? hand : null,
      }),
      gauge.tag,
    );
    setBusy(false);
    setChosen(null);
  };

  return (
    <>
      <h2 className={styles.title}>{headline ?? titleOf(place)}</h2>
      {again === 'datum-changed' && <p className={styles.how}>{t('hang.againDatum')}</p>}
      {asked && again === null && <p className={styles.how}>{t('hang.againAsked')}</p>}
      {headline === null && (
        <>
          <Setting place={place} head={head} />
          <Points place={place} />
        </>
      )}
      <form className={styles.fields} onSubmit={(event) => void submit(event)}>
        {usable.length === 0 ? (
          <p>{t('hang.noneFits', { kinds: kindsText() })}</p>
        ) : (
          <fieldset className={styles.gauges}>
            <legend>{t('hang.gauge')}</legend>
            {usable.map((one) => (
              <label key={one.tag} className={styles.gauge}>
                <input
                  ref={one.tag === tag ? first : undefined}
                  data-first={one.tag === tag ? '' : undefined}
                  type="radio"
                  name="gauge"
                  value={one.tag}
                  checked={one.tag === tag}
                  onChange={() => setChosen(one.tag)}
                />
                <span>
                  {one.tag}
                  <small>
                    {one.hangsAt === null ? kindText(one) : t('hang.hangsAt', { name: one.hangsAt })}
                  </small>
                </span>
              </label>
            ))}
          </fieldset>
        )}
        {hands.length > 1 && (
          <div className={styles.field}>
            <label htmlFor="hand">{t('hang.hand')}</label>
            <select id="hand" name="hand" defaultValue={me}>
              {hands.map((code) => (
                <option key={code}>{code}</option>
              ))}
            </select>
          </div>
        )}
        <div className={styles.row}>
          <button type="submit" className={button.strong} disabled={gauge === null}>
            {t(isLength ? 'hang.doLength' : 'hang.do')}
          </button>
          {asked && (
            <button type="button" className={button.button} onClick={stay}>
              {t('hang.stay')}
            </button>
          )}
        </div>
      </form>
      {headline === null && <Remarks gauge={gauge} choices={choices} isLength={isLength} />}
    </>
  );

  function titleOf(of: Place): string {
    const name = placeName(of);
    if (isLength) return t('hang.titleLength', { name });
    return t(of.step === 'centerline' ? 'hang.titlePins' : 'hang.title', { name });
  }

  function kindText({ kind }: GaugeChoice): string {
    return kind === null ? '' : t(`kinds.${kind}`);
  }

  function kindsText(): string {
    return [...new Set(choices.map(kindText))].filter((text) => text !== '').join(', ') || t('hang.gauge');
  }
}

/** What is to be known of the chosen gauge, and which cannot be chosen. */
function Remarks({
  gauge,
  choices,
  isLength,
}: {
  gauge: GaugeChoice | null;
  choices: GaugeChoice[];
  isLength: boolean;
}) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const out = choices.filter(({ usable }) => !usable);
  const mark = gauge?.fixedMark ?? null;
  return (
    <ul data-plain className={styles.remarks}>
      {mark !== null && !isLength && <li>{t('hang.mark', { value: settingText(mark, to) })}</li>}
      {gauge?.kind === 'tape' && <li>{t('hang.tape')}</li>}
      {out.map(({ tag }) => (
        <li key={tag}>{t('hang.out', { tag })}</li>
      ))}
    </ul>
  );
}

/** The set height with its sum; of a length the sheet's value only on request, so that no reading is drawn to it. */
function Setting({ place, head }: { place: Place; head: BayHead }) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const setting = settingsOf(place, head.clearance);
  const [first] = place.dimensions;
  if (setting !== null && first !== undefined) {
    const left = settingText(setting.left, to);
    return (
      <div>
        <p className={styles.setting}>
          {setting.right === null
            ? t('hang.setBoth', { value: left })
            : t('hang.setEach', { left, right: settingText(setting.right, to) })}
        </p>
        {setting.right === null && (
          <p className={styles.sum}>
            {t('hang.sum', {
              sheet: settingText(first.nominal, to),
              clearance: settingText(head.clearance, to),
            })}
          </p>
        )}
      </div>
    );
  }
  if (place.step === 'centerline') return <p className={styles.how}>{t('hang.pins')}</p>;
  return (
    <div>
      <p className={styles.how}>{t('hang.lengthHow')}</p>
      <details>
        <summary>{t('hang.sheetSays')}</summary>
        {place.dimensions.map((one) => (
          <p key={one.point}>
            {dimensionText(t, one)}: {settingText(settingOf(one, head.clearance), to)}
          </p>
        ))}
      </details>
    </div>
  );
}

/** Where the points are, and what is measured to. */
export function Points({ place }: { place: Place }) {
  const texts = place.points.map(({ letter, description, feature }) =>
    [letter, [description, feature].filter((text) => text !== null && text !== '').join(', ')].join(': '),
  );
  const said = [...new Set(texts)].filter((text) => !text.endsWith(': '));
  return said.length === 0 ? null : <p className={styles.where}>{said.join(' · ')}</p>;
}

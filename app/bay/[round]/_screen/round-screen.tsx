'use client';

import { Suspense, useMemo, useState } from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { classNames } from '@/app/_look/class-names';
import { Note } from '@/app/_look/note';
import { localeOf } from '@/app/_words/speech/speech';
import { useSpeech } from '@/app/_words/speech/device';
import type { Knowledge } from '@/app/bay/_device/knowledge';
import {
  aimedNext,
  planOf,
  progressOf,
  recordOf,
  type Aim,
  type BayHead,
  type KeptEntry,
  type Place,
  type Prompt,
  type Step,
} from '@/lib/bay';
import { announcement, spokenText } from './announcement';
import { Clashes, CorrectForm, LeaveForm, SoFar } from './beside';
import { CaughtPanel } from './caught-panel';
import { DatumNotes } from './datum-notes';
import { Finished } from './finish-prompt';
import { HelperPanel } from './helper-panel';
import { lastReading } from './last-reading';
import { LookSwitch } from './look-switch';
import { More } from './more';
import { NextCheck } from './next-check';
import { promptKey, promptText } from './names';
import { Now } from './now';
import { usePreference } from './preference';
import { ScreenHead } from './screen-head';
import { StateLine } from './state-line';
import { straightOn } from './straight-on';
import { Steps } from './steps';
import { useAwake } from './use-awake';
import { useCaught } from './use-caught';
import { useCopied } from './use-copied';
import { useEntering } from './use-entering';
import { useForgetting } from './use-forgetting';
import { useKnowledge } from './use-knowledge';
import { useRound } from './use-round';
import { useSpoken } from './use-spoken';
import styles from './round-screen.module.css';

interface RoundScreenProps {
  head: BayHead;
  kept: KeptEntry[];
  knowledge: Knowledge;
  /** Under which this person's entries stand on the device, and the code by which they are known. */
  who: string;
  code: string;
}

/** Leads through a round beside the vehicle: one thing to do, large, and what the last reading means. */
export function RoundScreen({ head, kept, knowledge: known, who, code }: RoundScreenProps) {
  const t = useTranslations('bay');
  const to = useSpeech();
  const whose = useMemo(() => ({ who, code, round: head.id }), [who, code, head.id]);
  const { shown, enter: keep } = useRound(whose, head, kept);
  const entering = useEntering(keep);
  const knowledge = useKnowledge(head.id, known);
  const plan = useMemo(() => planOf(head.sheet), [head.sheet]);
  const record = useMemo(() => recordOf(shown.kept, shown.own, code), [shown.kept, shown.own, code]);
  const caught = useCaught(head, plan, record, knowledge);
  const [aim, setAim] = useState<Aim | null>(null);
  const [pinned, setPinned] = useState<Prompt | null>(null);
  /** The length for which another gauge is chosen. */
  const [choosing, setChoosing] = useState<string | null>(null);
  const large = usePreference('large') === 'yes';
  const spoken = usePreference('spoken') === 'yes';
  const ready = shown.state === 'ready';
  const copied = useCopied(ready);
  useForgetting(who);

  const finished = record.finished || shown.head.finishedAt !== null;
  useAwake(!finished);
  // What is being typed belongs to the reading that was asked for, whatever another device enters meanwhile.
  const asked = pinned ?? aimedNext(plan, record, aim);
  const straight = choosing === promptKey(asked) ? null : straightOn(asked, record, knowledge.gauges);
  const prompt = straight ?? asked;
  const progress = progressOf(plan, record);
  const entries = useMemo(() => [...shown.kept, ...shown.own], [shown.kept, shown.own]);
  const last = lastReading(plan, record, entries, { device: shown.device, clearance: head.clearance });
  const round = caught.is === 'found' ? caught.round : null;
  const sentence = promptText(t, prompt, head, to);
  const aloud = finished || !ready ? '' : spokenText(t, to, { last, round }, sentence);
  useSpoken(aloud, spoken, localeOf(to));
  const missing = progress.reduce(
    (sum, { wanted, done, skipped }) => sum + (skipped === null ? wanted - done : 0),
    0,
  );

  const aimAt = (next: Aim) => {
    setPinned(null);
    setAim(next);
  };
  const hangAgain = (place: Place) => aimAt({ step: place.step, place: place.key, again: true });
  const resume = (step: Step, place: string | null) => {
    void entering.enter([{ kind: 'resume', step, place }]);
    aimAt({ step, place, again: false });
  };

  return (
    <main id="main" tabIndex={-1} className={styles.main} data-large={large ? 'yes' : undefined}>
      <ScreenHead head={head}>
        <LookSwitch large={large} spoken={spoken} />
      </ScreenHead>
      <noscript>
        <Note kind="caution">
          <p>{t('round.noScript')}</p>
        </Note>
      </noscript>
      <div data-needs-script>
        <StateLine shown={shown} copied={copied} />
      </div>
      <div className={styles.screen} data-needs-script>
        <p role="status" className="out-of-sight">
          {ready && announcement(t, to, last, finished ? null : sentence)}
        </p>
        <div className={styles.first}>
          {entering.trouble !== null && (
            <Note kind="fault" live>
              <p>{t(entering.trouble === 'failed' ? 'read.failed' : 'hang.meanwhile')}</p>
            </Note>
          )}
          {round !== null && <DatumNotes plan={plan} record={record} round={round} />}
          <section id="now" className={styles.now}>
            {finished ? (
              <Finished job={head.job} waiting={shown.own.length > 0} />
            ) : (
              <Now
                {...{ prompt, head, plan, record, knowledge, code, ready, entering, aim, setAim }}
                headline={large ? sentence : null}
                otherGauge={straight === null ? null : () => setChoosing(promptKey(asked))}
                pin={(yes) => setPinned(yes ? asked : null)}
              />
            )}
          </section>
          {record.contradictions.length > 0 && (
            <Suspense>
              <Clashes plan={plan} record={record} enter={entering.enter} />
            </Suspense>
          )}
        </div>
        <div className={styles.second}>
          <section
            className={classNames(styles.panel, last !== null && styles.kept)}
            aria-labelledby="kept-title"
          >
            <h2 id="kept-title">{t('kept.title')}</h2>
            <CaughtPanel last={last} caught={caught} hangAgain={hangAgain} />
            {round !== null && last?.hidden === false && (
              <NextCheck plan={plan} record={record} round={round} last={last.setup.label} />
            )}
          </section>
          <section className={styles.panel} aria-labelledby="steps-title">
            <h2 id="steps-title">{t('steps.title')}</h2>
            <Steps
              progress={progress}
              now={finished || prompt.do === 'finish' ? null : prompt.step}
              go={finished ? null : (step) => aimAt({ step, place: null, again: false })}
              resume={(step) => resume(step, null)}
            />
          </section>
        </div>
        <div className={styles.third}>
          <More title={t('soFar.title')}>
            <SoFar
              {...{ plan, record, resume }}
              kept={shown.kept}
              clearance={head.clearance}
              again={hangAgain}
            />
          </More>
          {!finished && (
            <>
              <More title={t('correct.title')}>
                <CorrectForm plan={plan} record={record} enter={entering.enter} />
              </More>
              <More title={t('leave.title')}>
                <LeaveForm prompt={prompt} enter={entering.enter} />
              </More>
            </>
          )}
          <HelperPanel clearance={head.clearance} />
          {!finished && missing > 0 && (
            <More title={t('finish.title')}>
              <p>{t('finish.missing', { n: missing })}</p>
              <button
                type="button"
                className={button.button}
                onClick={() => void entering.enter([{ kind: 'finish' }])}
              >
                {t('finish.early')}
              </button>
            </More>
          )}
        </div>
      </div>
    </main>
  );
}

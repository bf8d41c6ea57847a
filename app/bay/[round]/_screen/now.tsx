import {
  alsoRead,
  lastSetupAt,
  type Aim,
  type BayHead,
  type BayRecord,
  type PlannedStep,
  type Prompt,
} from '@/lib/bay';
import type { Knowledge } from '@/app/bay/_device/knowledge';
import { CheckPrompt } from './check-prompt';
import { readingBodies } from './enter-reading';
import { FinishPrompt } from './finish-prompt';
import { gaugeChoices } from './gauge-choices';
import { HangPrompt } from './hang-prompt';
import { prefer, usePreference } from './preference';
import { ReadPrompt } from './read-prompt';
import type { Entering } from './use-entering';

/** Tags remembered as used on this device. */
const REMEMBERED = 12;

interface NowProps {
  prompt: Prompt;
  headline: string | null;
  head: BayHead;
  plan: readonly PlannedStep[];
  record: BayRecord;
  knowledge: Knowledge;
  code: string;
  ready: boolean;
  entering: Entering;
  /** Set where the gauge of a length comes with its number. */
  otherGauge: (() => void) | null;
  aim: Aim | null;
  setAim: (aim: Aim | null) => void;
  /** Holds on to the prompt while something is typed for it. */
  pin: (yes: boolean) => void;
}

/** The one thing to do now. */
export function Now(props: NowProps) {
  const {
    prompt,
    headline,
    head,
    plan,
    record,
    knowledge,
    code,
    ready,
    entering,
    otherGauge,
    aim,
    setAim,
    pin,
  } = props;
  const usual = usePreference('gauges').split(' ');
  const { tryTo, enter } = entering;
  switch (prompt.do) {
    case 'check':
      return <CheckPrompt check={prompt.check} headline={headline} enter={enter} />;
    case 'hang': {
      const { place } = prompt;
      const asked = aim?.again === true && lastSetupAt(record, place) !== null;
      return (
        <HangPrompt
          prompt={prompt}
          head={head}
          headline={headline}
          asked={asked}
          choices={gaugeChoices(knowledge.gauges, { plan, record, place }, usual)}
          me={code}
          hands={knowledge.hands}
          hang={async (make, gauge) => {
            if (!(await tryTo(make))) return;
            setAim(aim === null ? null : { ...aim, again: false });
            prefer('gauges', [gauge, ...usual.filter((one) => one !== gauge)].slice(0, REMEMBERED).join(' '));
          }}
          stay={() => setAim(null)}
        />
      );
    }
    case 'read': {
      const tracks = prompt.setup.gaugeKind === 'tracking';
      return (
        <ReadPrompt
          prompt={prompt}
          head={head}
          headline={headline}
          also={tracks ? alsoRead(plan, record, prompt.place) : null}
          ready={ready}
          otherGauge={otherGauge}
          typing={pin}
          keep={async (asked, targets, values) => {
            const kept = await tryTo(readingBodies(asked, targets, values, code));
            if (kept && aim?.again === true) setAim({ ...aim, again: false });
            return kept;
          }}
        />
      );
    }
    case 'finish':
      return (
        <FinishPrompt
          clashes={record.contradictions.length}
          finish={() => void enter([{ kind: 'finish' }])}
        />
      );
  }
}

import { Glyph } from '@/app/_look/glyph';
import type { Speech } from '@/app/_words/speech';
import { remarkKey, remarkSentence } from '@/app/sheets/_parts/remark-words';
import type { Say } from '@/app/sheets/_parts/say';
import { isFault, type Remark } from '@/lib/measure/sheet';
import styles from './editor.module.css';

interface RemarksProps {
  remarks: readonly Remark[];
  say: Say;
  speech: Speech;
}

/** What speaks against a row, or against the sheet: a word and a shape tell a fault from a doubt. */
export function Remarks({ remarks, say, speech }: RemarksProps) {
  return (
    <ul className={styles.remarks} data-plain>
      {remarks.map((one, index) => (
        <li key={`${remarkKey(one)} ${index}`} className={isFault(one) ? styles.fault : styles.doubt}>
          <Glyph name={isFault(one) ? 'caution' : 'remark'} />
          <span>
            <b>{say(isFault(one) ? 'level.fault' : 'level.doubt')}</b> {remarkSentence(one, say, speech)}
          </span>
        </li>
      ))}
    </ul>
  );
}

import { drawnOnce } from '@/app/_look/still';
import { millimetres } from '@/app/_words/numbers';
import { dayAndTime } from '@/app/_words/times';
import { words } from '@/app/_words/words';
import type { SheetRevision } from '@/lib/access';
import { sheetChanges, type SheetChange } from '@/lib/measure/sheet';
import styles from './history.module.css';
import { sayer, type Say } from './say';

/** Changes of one revision that stand open; more are folded away. */
const OPEN = 12;

/** Every revision, the latest first, with what changed from the one before it. */
export const History = drawnOnce(function History({
  history,
  timeZone,
}: {
  history: readonly SheetRevision[];
  timeZone: string;
}) {
  const t = words('sheets');
  if (history.length === 0) return <p>{t('history.none')}</p>;
  return (
    <ol className={styles.history} data-plain>
      {history
        .map((revision, index) => ({ revision, before: history[index - 1] ?? null }))
        .reverse()
        .map(({ revision, before }) => (
          <li key={revision.revision} className={styles.revision}>
            <h3>{t('history.revision', { revision: revision.revision })}</h3>
            <p>
              {t(`history.origin.${revision.origin}`, { from: revision.copiedFrom ?? '' })}{' '}
              {t('history.by', { who: revision.by, when: dayAndTime(revision.at, timeZone) })}
            </p>
            {revision.reason !== null && (
              <p>
                {t('history.why')} <q>{revision.reason}</q>
              </p>
            )}
            {before !== null && <Changes changes={sheetChanges(before.content, revision.content)} />}
          </li>
        ))}
    </ol>
  );
});

function Changes({ changes }: { changes: readonly SheetChange[] }) {
  const t = words('sheets');
  const say = sayer(t);
  const list = (some: readonly SheetChange[]) => (
    <ul>
      {some.map((change, index) => (
        <li key={index}>{changeWords(change, say)}</li>
      ))}
    </ul>
  );
  if (changes.length <= OPEN) return list(changes);
  return (
    <details>
      <summary>{t('history.changes', { count: changes.length })}</summary>
      {list(changes)}
    </details>
  );
}

/** `Height K left: sheet value from 250.0 mm to 252.0 mm`. */
function changeWords({ of, what, field, from, to }: SheetChange, say: Say): string {
  const name = nameWords(of, what, say);
  if (field === 'itself')
    return say(from === null ? 'history.added' : 'history.removed', {
      name,
      value: valueWords(field, from ?? to, say),
    });
  return say('history.changed', {
    name,
    field: say(`field.${field}`),
    from: valueWords(field, from, say),
    to: valueWords(field, to, say),
  });
}

function nameWords(of: string, what: SheetChange['what'], say: Say): string {
  const parts = of.split(' ');
  const side = parts.at(-1);
  const sided = side === 'L' || side === 'R';
  const rest = parts.slice(what === 'dimension' ? 1 : 0, sided ? -1 : undefined).join(' ');
  const name = say(`quantity.${what === 'dimension' ? (parts[0] ?? '') : 'point'}`, {
    name: rest.replace('-', '–'),
  });
  return sided ? `${name}, ${say(`side.${side}`)}` : name;
}

function valueWords(field: SheetChange['field'], value: SheetChange['from'], say: Say): string {
  if (value === null || value === '') return say('history.nothing');
  if (typeof value === 'boolean') return field === 'itself' ? '' : say(value ? 'yes' : 'no');
  if (typeof value === 'number') return millimetres(value);
  if (field === 'section') return say(`section.${value}`);
  return `“${value}”`;
}

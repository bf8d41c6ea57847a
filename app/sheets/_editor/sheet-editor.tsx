'use client';

import {
  useDeferredValue,
  useEffect,
  useMemo,
  useRef,
  useState,
  type ClipboardEvent,
  type FocusEvent,
  type KeyboardEvent,
} from 'react';
import { useTranslations } from 'use-intl/react';
import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import { unit } from '@/app/_words/numbers';
import { useSpeech } from '@/app/_words/speech/device';
import { lengthField, pointField } from '@/app/sheets/_drafts/field-names';
import { textsOf, typedIn } from '@/app/sheets/_drafts/typed-in';
import { SheetPicture } from '@/app/sheets/_drawing/sheet-picture';
import { fitWords } from '@/app/sheets/_parts/fit-words';
import { remarkKey } from '@/app/sheets/_parts/remark-words';
import { sayer } from '@/app/sheets/_parts/say';
import { lengthFrom } from '@/app/sheets/_parts/typed-lengths';
import {
  checkRows,
  emptyLength,
  emptyPoint,
  isBlankLength,
  isBlankPoint,
  isFault,
  readTyped,
  remarksAt,
  type LengthColumn,
  type PointColumn,
  type Remark,
  type TypedSheet,
} from '@/lib/measure/sheet';
import { lengthColumns, pointColumns } from './columns';
import styles from './editor.module.css';
import { Grid } from './grid';
import { cellsIn, pasteLengths, pastePoints } from './paste';
import { Remarks } from './remark-rows';

interface SheetEditorProps {
  /** Where the form goes. */
  action: string;
  /** In the reader's units, with empty rows to fill. */
  typed: TypedSheet;
  /** Where a row states none, mm. */
  tolerance: number;
  /** Doubts that the sheet has had before, by `remarkKey`. */
  knownDoubts: readonly string[];
  /** Of a new sheet its name, of a correction its reason. */
  of:
    | { kind: 'new'; name: string; origin: 'entered' | 'loaded' }
    | { kind: 'correction'; revision: number; reason: string };
}

/**
 * A sheet as rows of plain fields. Without scripts they are checked by sending them; with scripts the drawing and the
 * checks follow the typing, Enter moves on, a new row appears by itself, and rows of a spreadsheet can be pasted.
 */
export function SheetEditor({ action, typed: first, tolerance, knownDoubts, of }: SheetEditorProps) {
  const say = sayer(useTranslations('sheets'));
  const speech = useSpeech();
  const form = useRef<HTMLFormElement>(null);
  const [typed, setTyped] = useState(first);
  const [active, setActive] = useState<{ row: string; told: readonly string[] }>({ row: '', told: [] });
  // What was typed before the scripts were there stands in the fields alone.
  useEffect(() => {
    if (form.current === null) return;
    const there = typedIn(textsOf(new FormData(form.current)));
    setTyped((known) => (JSON.stringify(there) === JSON.stringify(known) ? known : withRoom(there)));
  }, []);
  const followed = useDeferredValue(typed);
  const read = useMemo(() => {
    const rows = readTyped(followed, { number: lengthFrom(speech.units), tolerance });
    const isBlank = rows.points.length + rows.lengths.length === 0;
    const found = isBlank ? [] : [...rows.remarks, ...remarksAt(checkRows(rows), rows.places)];
    return { ...rows, found };
  }, [followed, speech.units, tolerance]);
  // What is wrong with a row only because it is still being typed is not said before it is left.
  const shown = read.found.filter(
    (one) => one.at === null || placeOf(one) !== active.row || active.told.includes(one.code),
  );
  const unfit = new Set(
    read.found.flatMap(({ code, at }) =>
      at?.block === 'lengths' && code.startsWith('length-') ? [at.row] : [],
    ),
  );
  const doubts = read.found.filter((one) => !isFault(one) && !knownDoubts.includes(remarkKey(one)));
  const general = shown.filter(({ at }) => at === null);

  const change = (next: TypedSheet) => setTyped(withRoom(next));
  const changePoint = (row: number, column: PointColumn, value: string) =>
    change({
      ...typed,
      points: typed.points.map((one, at) => (at === row ? { ...one, [column]: value } : one)),
    });
  const changeLength = (row: number, column: LengthColumn, value: string) =>
    change({
      ...typed,
      lengths: typed.lengths.map((one, at) => (at === row ? { ...one, [column]: value } : one)),
    });

  function paste(event: ClipboardEvent<HTMLElement>, put: (cells: string[][]) => TypedSheet) {
    const cells = cellsIn(event.clipboardData.getData('text/plain'));
    if (cells === null) return;
    event.preventDefault();
    change(put(cells));
  }

  function enterRow(event: FocusEvent<HTMLFormElement>) {
    const row = event.target.closest('[data-row]')?.getAttribute('data-row') ?? '';
    if (row === active.row) return;
    setActive({ row, told: read.found.filter((one) => placeOf(one) === row).map(({ code }) => code) });
  }

  /** Enter is what a numeric keypad has: it goes on to the next field, with Shift back, and never sends the form. */
  function moveOn(event: KeyboardEvent<HTMLFormElement>) {
    const field = event.target;
    if (event.key !== 'Enter' || !(field instanceof HTMLElement) || !('cell' in field.dataset)) return;
    event.preventDefault();
    const cells = [...(form.current?.querySelectorAll<HTMLElement>('[data-cell]') ?? [])];
    const next = cells[cells.indexOf(field) + (event.shiftKey ? -1 : 1)];
    next?.focus();
    if (next instanceof HTMLInputElement) next.select();
  }

  const behind = (row: number): string | null => {
    const at = read.places.lengths.indexOf(row);
    const length = read.lengths[at];
    return length === undefined ? null : fitWords(length, read.points, say, speech);
  };

  return (
    // Keys that move on are a help beside Tab, which works everywhere.
    // eslint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <form
      ref={form}
      className={styles.form}
      action={action}
      method="post"
      onKeyDown={moveOn}
      onFocus={enterRow}
      autoComplete="off"
    >
      <input type="hidden" name="units" value={speech.units} />
      {of.kind === 'new' ? (
        <div className={styles.name}>
          <input type="hidden" name="origin" value={of.origin} />
          <Field label={say('editor.name')} id="name">
            <input id="name" name="name" required maxLength={80} defaultValue={of.name} />
          </Field>
        </div>
      ) : (
        <input type="hidden" name="revision" value={of.revision} />
      )}
      <div className={styles.drawing} aria-live="off">
        <SheetPicture rows={read} unfit={placesIn(unfit, read.places.lengths)} say={say} speech={speech} />
      </div>
      <div role="status" className={styles.general}>
        {general.length > 0 && <Remarks remarks={general} say={say} speech={speech} />}
      </div>
      <fieldset className={styles.block}>
        <legend>{say('editor.points')}</legend>
        <p className={styles.hint}>{say('editor.pointsHint', { unit: unit(speech) })}</p>
        <Grid
          block="points"
          caption={say('editor.points')}
          columns={pointColumns(say, speech)}
          rows={typed.points}
          field={pointField}
          remarks={shown}
          say={say}
          speech={speech}
          onChange={changePoint}
          onPaste={(row, column, event) =>
            paste(event, (cells) => ({ ...typed, points: pastePoints(typed.points, { row, column }, cells) }))
          }
        />
      </fieldset>
      <fieldset className={styles.block}>
        <legend>{say('editor.lengths')}</legend>
        <p className={styles.hint}>{say('editor.lengthsHint')}</p>
        <Grid
          block="lengths"
          caption={say('editor.lengths')}
          columns={lengthColumns(say, speech)}
          rows={typed.lengths}
          field={lengthField}
          remarks={shown}
          behind={behind}
          behindHead={say('columns.fits')}
          say={say}
          speech={speech}
          onChange={changeLength}
          onPaste={(row, column, event) =>
            paste(event, (cells) => ({
              ...typed,
              lengths: pasteLengths(typed.lengths, { row, column }, cells),
            }))
          }
        />
      </fieldset>
      {of.kind === 'correction' && (
        <div className={styles.name}>
          <Field label={say('editor.reason')} id="reason">
            <input id="reason" name="reason" required maxLength={300} defaultValue={of.reason} />
          </Field>
        </div>
      )}
      {doubts.length > 0 && (
        <label className={styles.keep}>
          <input type="checkbox" name="keepDoubts" value="yes" />
          {say('editor.keepDoubts', { count: doubts.length })}
        </label>
      )}
      <div className={styles.buttons}>
        <button type="submit" name="do" value="save" className={button.strong}>
          {say(of.kind === 'new' ? 'editor.save' : 'editor.correct')}
        </button>
        <button type="submit" name="do" value="check" className={button.button} formNoValidate>
          {say('editor.check')}
        </button>
      </div>
    </form>
  );
}

const placeOf = ({ at }: Remark): string => (at === null ? '' : `${at.block} ${at.row}`);

/** Rows as they were typed as places in the list of those that are not empty. */
const placesIn = (typed: ReadonlySet<number>, places: readonly number[]): Set<number> =>
  new Set(places.flatMap((row, index) => (typed.has(row) ? [index] : [])));

/** An empty row is always there to go on in. */
function withRoom({ points, lengths }: TypedSheet): TypedSheet {
  const [point, length] = [points.at(-1), lengths.at(-1)];
  return {
    points: point === undefined || !isBlankPoint(point) ? [...points, emptyPoint()] : points,
    lengths: length === undefined || !isBlankLength(length) ? [...lengths, emptyLength()] : lengths,
  };
}

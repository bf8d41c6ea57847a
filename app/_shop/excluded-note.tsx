import { Note } from '@/app/_look/note';
import { count } from '@/app/_words/numbers';
import { countExcluded, type SetupFilter, type Viewer } from '@/lib/access';

interface ExcludedNoteProps {
  viewer: Viewer;
  /** The setups behind the figures of the page. */
  filter?: SetupFilter;
}

/** Says how many readings are left out of the figures that follow; nothing where none are. */
export async function ExcludedNote({ viewer, filter = {} }: ExcludedNoteProps) {
  const excluded = await countExcluded(viewer, filter);
  if (excluded === 0) return null;
  return (
    <Note>
      <p>
        {count(excluded, 'reading is', 'readings are')} excluded from these figures, each with a reason on
        record under its job’s readings.
      </p>
    </Note>
  );
}

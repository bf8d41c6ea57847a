import { Note } from '@/app/_look/note';
import { words } from '@/app/_words/words';
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
      <p>{words('shop')('excluded', { n: excluded })}</p>
    </Note>
  );
}

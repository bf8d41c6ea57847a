import type { ReactNode } from 'react';

export type GlyphName =
  | 'neither'
  | 'gauge'
  | 'body'
  | 'both'
  | 'undecided'
  | 'within'
  | 'out'
  | 'open'
  | 'caution'
  | 'remark'
  | 'rising'
  | 'falling';

/** Each meaning has a shape of its own, so that none rests on colour. Drawn on a field of 20 by 20. */
const SHAPES: Record<GlyphName, ReactNode> = {
  neither: <path d="M3 7h14M3 13h14" {...stroke()} />,
  gauge: <path d="M5 2v9M15 2v9M2 11h16M10 11v6M7.5 17h5" {...stroke()} />,
  body: <path d="M2 6h5l3 4 3-4h5v9H2z" fill="currentColor" />,
  both: (
    <>
      <path d="M5 2v6M15 2v6M2 8h16" {...stroke()} />
      <path d="M2 11h5l3 3 3-3h5v7H2z" fill="currentColor" />
    </>
  ),
  undecided: (
    <>
      <path d="M6.5 7a3.5 3.5 0 1 1 5.2 3c-1.1.7-1.7 1.2-1.7 2.6" {...stroke()} />
      <circle cx="10" cy="16.4" r="1.5" fill="currentColor" />
    </>
  ),
  within: <path d="M4 3v14M16 3v14M7 10h6" {...stroke()} />,
  out: <path d="M10 3v14M12.5 10H19M16 6.5l3 3.5-3 3.5M1.5 10H6" {...stroke()} />,
  open: <circle cx="10" cy="10" r="6.5" {...stroke()} strokeDasharray="3 3" />,
  caution: <path d="M10 2.5 18.5 17h-17zM10 8v4.2M10 14.3v.6" {...stroke()} strokeLinejoin="round" />,
  remark: <path d="M4 3h12v10H9l-4 4v-4H4z" {...stroke()} strokeLinejoin="round" />,
  rising: <path d="M10 17V4M5 9l5-5 5 5" {...stroke()} />,
  falling: <path d="M10 3v13M5 11l5 5 5-5" {...stroke()} />,
};

function stroke() {
  return { fill: 'none', stroke: 'currentColor', strokeWidth: 2, strokeLinecap: 'round' } as const;
}

/** A small drawing beside a word that says the same. */
export function Glyph({ name }: { name: GlyphName }) {
  return (
    <svg width="1.15em" height="1.15em" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      {SHAPES[name]}
    </svg>
  );
}

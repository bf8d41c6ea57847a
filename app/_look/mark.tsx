/** A gauge hanging level between its two hangers. */
export function Mark() {
  return (
    <svg width="30" height="30" viewBox="0 0 30 30" aria-hidden="true" focusable="false">
      <path
        d="M6 3v15M24 3v15M2.5 18h25M15 18v8M11.5 26h7"
        fill="none"
        stroke="currentColor"
        strokeWidth="2.6"
        strokeLinecap="round"
      />
    </svg>
  );
}

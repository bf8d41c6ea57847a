/**
 * A page that streams in is revealed by a script. Where scripts do not run, show the finished page and not its
 * skeleton.
 */
export function WithoutScript() {
  return (
    <noscript>
      <style>{`body > [hidden][id^="S:"] { display: contents !important } [data-skeleton] { display: none !important } [data-needs-script] { display: none !important }`}</style>
    </noscript>
  );
}

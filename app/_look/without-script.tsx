import { headers } from 'next/headers';
import { NONCE_HEADER } from '@/lib/shield';

/**
 * A page that streams in is revealed by a script. Where scripts do not run, show the finished page and not its
 * skeleton.
 */
export async function WithoutScript() {
  const nonce = (await headers()).get(NONCE_HEADER) ?? undefined;
  return (
    <noscript>
      <style
        nonce={nonce}
      >{`body > [hidden][id^="S:"] { display: contents !important } [data-skeleton] { display: none !important } [data-needs-script] { display: none !important }`}</style>
    </noscript>
  );
}

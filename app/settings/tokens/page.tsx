import type { Metadata } from 'next';
import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { listTokens } from '@/lib/access';
import { TokenForm } from './_parts/token-form';
import { TokenTable } from './_parts/token-table';

export const metadata: Metadata = { title: 'Tokens' };

export default async function Tokens() {
  const viewer = await enter();
  const tokens = await listTokens(viewer);
  const told = await said();
  return (
    <Page
      above={<Link href="/settings">Settings</Link>}
      title="Tokens"
      lead="A token lets another program load measurements or fetch reports of this shop, without a person signing in."
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <Panel id="tokens" title="All tokens" note="A revoked token no longer works from that moment on.">
        <TokenTable tokens={tokens} timeZone={viewer.shop.timeZone} />
      </Panel>
      <Panel
        id="make"
        title="Make a token"
        note="It is shown once, on the next page. Whoever has it can do what it is for: give each program its own."
      >
        <TokenForm />
      </Panel>
    </Page>
  );
}

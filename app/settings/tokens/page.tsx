import Link from 'next/link';
import { Note } from '@/app/_look/note';
import { Page } from '@/app/_look/page';
import { Panel } from '@/app/_look/panel';
import { enter } from '@/app/_shop/enter';
import { said } from '@/app/_shop/said';
import { listTokens } from '@/lib/access';
import { TokenForm } from './_parts/token-form';
import { TokenTable } from './_parts/token-table';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';

export const generateMetadata = titled(() => words('settings')('tokens.title'));

export default async function Tokens() {
  const viewer = await enter();
  const t = words('settings');
  const tokens = await listTokens(viewer);
  const told = await said();
  return (
    <Page
      above={<Link href="/settings">{t('title')}</Link>}
      title={t('tokens.title')}
      lead={t('tokens.lead')}
    >
      {told !== null && (
        <Note live>
          <p>{told}</p>
        </Note>
      )}
      <Panel id="tokens" title={t('tokens.all')} note={t('tokens.allNote')}>
        <TokenTable tokens={tokens} timeZone={viewer.shop.timeZone} />
      </Panel>
      <Panel id="make" title={t('tokens.make')} note={t('tokens.makeNote')}>
        <TokenForm />
      </Panel>
    </Page>
  );
}

import Link from 'next/link';
import { Page } from '@/app/_look/page';
import { Tag } from '@/app/_look/tag';
import prose from '@/app/_look/prose.module.css';
import { millimetres, percent } from '@/app/_words/numbers';
import { CALL_GLYPHS, callName, CALLS, callSentence } from '@/app/_words/verdicts';
import { missCostOf, sureFrom } from '@/app/_shop/miss-cost';
import { enter } from '@/app/_shop/enter';
import { titled } from '@/app/_words/titled';
import { words } from '@/app/_words/words';
import { may } from '@/lib/access';

export const generateMetadata = titled(() => words('method')('title'));

export default async function Method() {
  const viewer = await enter();
  const missCost = missCostOf(viewer.shop);
  const t = words('method');
  // A class is told from this probability on: the careful side of what missed damage costs against a needless re-hang.
  const sure = sureFrom(missCost);
  return (
    <Page title={t('heading')} lead={t('lead')}>
      <div className={prose.prose}>
        <section>
          <h2>{t('parts.title')}</h2>
          <p>{t('parts.sum', { height: millimetres(6, 0) })}</p>
          <p>{t('parts.apart')}</p>
        </section>
        <section>
          <h2>{t('calls.title')}</h2>
          <p>
            {t.rich('calls.sure', {
              cost: missCost,
              sure: percent(sure),
              rest: percent(1 - sure),
              settings: (chunks) =>
                may(viewer, 'change settings') ? <Link href="/settings">{chunks}</Link> : chunks,
            })}
          </p>
          <ul>
            {CALLS.map((call) => (
              <li key={call}>
                <Tag name={CALL_GLYPHS[call]}>{callName(call)}</Tag> {callSentence(call)}
              </li>
            ))}
          </ul>
          <p>{t('calls.weighed')}</p>
        </section>
        <section>
          <h2>{t('center.title')}</h2>
          <p>{t('center.text')}</p>
        </section>
        <section>
          <h2>{t('next.title')}</h2>
          <p>{t('next.text')}</p>
        </section>
        <section>
          <h2>{t('hands.title')}</h2>
          <p>{t('hands.text')}</p>
        </section>
        <section>
          <h2>{t('rates.title')}</h2>
          <p>{t('rates.text')}</p>
        </section>
        <section>
          <h2>{t('trust.title')}</h2>
          <p>
            {t.rich('trust.text', { calibration: (chunks) => <Link href="/calibration">{chunks}</Link> })}
          </p>
          <p>
            <Link href="/cautions">{t('trust.cautions')}</Link>
          </p>
        </section>
      </div>
    </Page>
  );
}

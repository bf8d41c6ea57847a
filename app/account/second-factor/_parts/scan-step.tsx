import { renderSVG } from 'uqr';
import button from '@/app/_look/button.module.css';
import { Field } from '@/app/_look/field';
import form from '@/app/_look/form.module.css';
import { Panel } from '@/app/_look/panel';
import styles from './scan-step.module.css';
import { words } from '@/app/_words/words';

interface ScanStepProps {
  uri: string;
  secret: string;
  spareCodes: string[];
}

/** What an authenticator reads, the spare codes to write down, and the first code as the proof. */
export function ScanStep({ uri, secret, spareCodes }: ScanStepProps) {
  const t = words('account');
  const picture = `data:image/svg+xml,${encodeURIComponent(renderSVG(uri, { border: 2 }))}`;
  return (
    <>
      <Panel id="scan" title={t('scan.title')}>
        {/* Drawn in the page itself: nothing is fetched, so nothing is gained by the framework's image. */}
        {/* eslint-disable-next-line @next/next/no-img-element */}
        <img className={styles.code} src={picture} alt={t('scan.picture')} />
        <p>
          {t.rich('scan.type', {
            secret: secret.match(/.{1,4}/g)?.join(' ') ?? '',
            code: (chunks) => <code className={styles.secret}>{chunks}</code>,
          })}
        </p>
      </Panel>
      <Panel id="spare" title={t('spare.title')} note={t('spare.note')}>
        <ul className={styles.spare}>
          {spareCodes.map((code) => (
            <li key={code}>
              <code>{code}</code>
            </li>
          ))}
        </ul>
      </Panel>
      <Panel id="confirm" title={t('confirm.title')}>
        <form className={form.form} action="/account/second-factor/step" method="post">
          <input type="hidden" name="step" value="confirm" />
          <Field label={t('confirm.code')} id="proof">
            <input
              id="proof"
              name="proof"
              required
              inputMode="numeric"
              pattern="[0-9 ]{6,7}"
              maxLength={7}
              autoComplete="one-time-code"
            />
          </Field>
          <button type="submit" className={button.strong}>
            {t('confirm.ask')}
          </button>
        </form>
      </Panel>
    </>
  );
}

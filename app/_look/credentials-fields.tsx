import { Field } from './field';
import form from './form.module.css';
import { words } from '@/app/_words/words';

interface CredentialsFieldsProps {
  signInName: string;
  limits: { shortestName: number; longestName: number; shortestPassword: number; longestPassword: number };
}

/** A sign-in name and a password to choose. */
export function CredentialsFields({ signInName, limits }: CredentialsFieldsProps) {
  const t = words('look');
  return (
    <>
      <Field label={t('credentials.name')} id="signInName">
        <input
          id="signInName"
          name="signInName"
          required
          minLength={limits.shortestName}
          maxLength={limits.longestName}
          pattern="[A-Za-z0-9_.]+"
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
          defaultValue={signInName}
        />
      </Field>
      <Field label={t('credentials.password', { least: limits.shortestPassword })} id="password">
        <input
          id="password"
          name="password"
          type="password"
          required
          minLength={limits.shortestPassword}
          maxLength={limits.longestPassword}
          autoComplete="new-password"
        />
      </Field>
      <p className={form.hint}>{t('credentials.hint')}</p>
    </>
  );
}

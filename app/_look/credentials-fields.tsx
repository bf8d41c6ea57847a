import { Field } from './field';
import form from './form.module.css';

interface CredentialsFieldsProps {
  signInName: string;
  limits: { shortestName: number; longestName: number; shortestPassword: number; longestPassword: number };
}

/** A sign-in name and a password to choose. */
export function CredentialsFields({ signInName, limits }: CredentialsFieldsProps) {
  return (
    <>
      <Field label="Sign-in name: letters, digits, dot and underscore" id="signInName">
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
      <Field label={`Password, ${limits.shortestPassword} characters or more`} id="password">
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
      <p className={form.hint}>Three or four words that only you would put together do well.</p>
    </>
  );
}

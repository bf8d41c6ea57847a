import { words } from '@/app/_words/words';

/** What is said of a sign-in that did not succeed; never whether the name exists. */
export function refusalWords(why: string | undefined, minutes: string | undefined): string | null {
  const t = words('signIn');
  switch (why) {
    case undefined:
      return null;
    case 'wait': {
      const n = Math.min(60, Math.max(1, Math.trunc(Number(minutes ?? '15')) || 15));
      return t('refused.wait', { n });
    }
    case 'code':
      return t('refused.code');
    default:
      return t('refused.wrong');
  }
}

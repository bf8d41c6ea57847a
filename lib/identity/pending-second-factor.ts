import { symmetricDecrypt } from 'better-auth/crypto';
import { createOTP } from '@better-auth/utils/otp';
import { auth } from './auth';

/**
 * A second factor that was begun and waits for its first code: what an authenticator must know of it. Null where
 * none waits; once confirmed it is never shown again.
 */
export async function pendingSecondFactor(
  headers: Headers,
): Promise<{ uri: string; secret: string; spareCodes: string[] } | null> {
  const api = auth().api;
  const found = await api.getSession({ headers });
  if (found === null || found.user.twoFactorEnabled === true) return null;
  const context = await auth().$context;
  const row = await context.adapter.findOne<{ secret: string }>({
    model: 'twoFactor',
    where: [{ field: 'userId', value: found.user.id }],
  });
  if (row === null) return null;
  const secret = await symmetricDecrypt({ key: context.secretConfig, data: row.secret });
  const { backupCodes } = await api.viewBackupCodes({ body: { userId: found.user.id } });
  const uri = createOTP(secret).url('Rehang', found.user.username ?? '');
  return { uri, secret: new URL(uri).searchParams.get('secret') ?? '', spareCodes: backupCodes };
}

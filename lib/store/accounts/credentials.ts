import { randomUUID } from 'node:crypto';
import type { Queries } from '@/lib/store/connection/database';

export interface Credentials {
  /** In small letters. */
  signInName: string;
  passwordHash: string;
}

/** The sign-in library wants an address for everybody; nobody is ever written to at this one. */
const addressOf = (signInName: string) => `${signInName}@sign-in.invalid`;

export class SignInNameTaken extends RangeError {}

/** Lets a person sign in, or gives a new name and password to one who could: every session ends then. */
export async function setCredentials(
  queries: Queries,
  shopId: number,
  personId: number,
  { signInName, passwordHash }: Credentials,
  now: Date,
): Promise<void> {
  const owner = await queries.user.findUnique({ where: { username: signInName } });
  const mine = await queries.user.findUnique({ where: { shopId_personId: { shopId, personId } } });
  if (owner !== null && owner.id !== mine?.id)
    throw new SignInNameTaken(`The sign-in name ${signInName} is taken. Choose another.`);
  const id = mine?.id ?? randomUUID();
  const names = {
    username: signInName,
    displayUsername: signInName,
    name: signInName,
    email: addressOf(signInName),
  };
  if (mine === null) {
    await queries.user.create({
      data: { id, ...names, emailVerified: false, createdAt: now, updatedAt: now, shopId, personId },
    });
  } else {
    await queries.user.update({ where: { id }, data: { ...names, twoFactorEnabled: false, updatedAt: now } });
    await queries.twoFactor.deleteMany({ where: { userId: id } });
    await queries.account.deleteMany({ where: { userId: id } });
    await queries.session.deleteMany({ where: { userId: id } });
  }
  await queries.account.create({
    data: {
      id: randomUUID(),
      accountId: id,
      providerId: 'credential',
      userId: id,
      password: passwordHash,
      createdAt: now,
      updatedAt: now,
    },
  });
}

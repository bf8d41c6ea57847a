import { ask } from '@/lib/store/sql/ask';
import type { AccountHolder, Role } from '@/lib/store/types';

/** Whom a session belongs to; null where it ended, or the person is gone or no longer works here. */
export async function sessionHolder(
  token: string,
  now = Date.now(),
): Promise<(AccountHolder & { session: string }) | null> {
  const [row] = await ask<Row>`
    SELECT s."id" AS "session", s."expiresAt", u."username", u."twoFactorEnabled",
      p."code", p."name", p."role", p."active",
      h."id" AS "shopId", h."name" AS "shopName", h."timeZone", h."defaultTolerance", h."inputsVersion", h."demo",
      (SELECT m."cost" FROM "MissCost" m WHERE m."shopId" = h."id" ORDER BY m."id" DESC LIMIT 1) AS "missCost"
    FROM "Session" s
      JOIN "User" u ON u."id" = s."userId"
      JOIN "Person" p ON p."shopId" = u."shopId" AND p."id" = u."personId"
      JOIN "Shop" h ON h."id" = u."shopId"
    WHERE s."token" = ${token}`;
  if (row?.active !== true || row.expiresAt.getTime() <= now) return null;
  const { code, name, role, active, timeZone, defaultTolerance, inputsVersion, demo, missCost } = row;
  return {
    session: row.session,
    shop: { id: row.shopId, name: row.shopName, timeZone, defaultTolerance, inputsVersion, demo, missCost },
    person: { code, name, role, active },
    signInName: row.username ?? '',
    secondFactor: row.twoFactorEnabled === true,
  };
}

interface Row {
  session: string;
  expiresAt: Date;
  username: string | null;
  twoFactorEnabled: boolean | null;
  code: string;
  name: string;
  role: Role;
  active: boolean;
  shopId: number;
  shopName: string;
  timeZone: string;
  defaultTolerance: number;
  inputsVersion: number;
  demo: boolean;
  missCost: number | null;
}

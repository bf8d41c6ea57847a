import type { Viewer } from '@/lib/identity';
import { getPerson, getShop } from '@/lib/store';

/** Who signed in with this code of the only shop of the test's database. */
export async function viewerOf(code: string): Promise<Viewer> {
  const shop = await getShop();
  const person = await getPerson(shop.id, code);
  if (person === null) throw new Error(`There is nobody with the code ${code}.`);
  const { name, role } = person;
  return { ...{ shop, code, name, role, person }, signInName: code, secondFactor: false, session: code };
}

import { getShop, listShops, type Shop } from '@/lib/store';

/**
 * The shop that a command is about.
 * @throws RangeError where no shop is of this name, or none is named and there are several.
 */
export async function shopNamed(name: string | undefined): Promise<Shop> {
  const shops = await listShops();
  const names = shops.map((shop) => shop.name).join(', ');
  if (name === undefined) {
    if (shops.length > 1)
      throw new RangeError(`This database holds several shops; name one of them with --shop: ${names}.`);
    return shops[0] ?? getShop();
  }
  const found = shops.find((shop) => shop.name === name);
  if (found === undefined) throw new RangeError(`There is no shop of the name ${name}; there are: ${names}.`);
  return found;
}

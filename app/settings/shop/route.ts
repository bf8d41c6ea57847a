import { IANAZone } from 'luxon';
import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { shopFields } from '@/app/_shop/shop-fields';
import { told } from '@/app/_words/told';
import { words } from '@/app/_words/words';
import { demand, saveShop } from '@/lib/access';

const shopForm = z.object(shopFields);

/** Keeps the shop's name and time zone, and leads back to the settings. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'change settings');
    const { fields, refused } = await fieldsOf(request, shopForm);
    if (refused !== null) return refused;
    const t = words('settings');
    const back = (text: string) => leadTo('/settings#shop', [saying(text, '/settings')]);
    if (fields === null) return back(t('shop.incomplete'));
    const { shopName: name, timeZone } = fields;
    if (!IANAZone.isValidZone(timeZone)) return back(words('welcome')('noTimeZone', { written: timeZone }));
    try {
      await saveShop(viewer, { name, timeZone });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return back(t('shop.fault', { fault: told(error.message) }));
    }
    return back(t('shop.kept'));
  });
}

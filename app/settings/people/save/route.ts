import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { demand, getPerson, ROLES, savePerson } from '@/lib/access';
import { words } from '@/app/_words/words';
import { told } from '@/app/_words/told';

const PLACE = '/settings/people';

const person = z.object({
  code: z.string().trim().min(1).max(20),
  name: z.string().trim().max(80),
  role: z.enum(ROLES),
  active: z.enum(['yes', 'no']).transform((word) => word === 'yes'),
});

const tell = (text: string) => leadTo(PLACE, [saying(text, PLACE)]);

/** Adds a person, or changes one. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'manage people');
    const { fields, refused } = await fieldsOf(request, person);
    if (refused !== null) return refused;
    const t = words('settings');
    if (fields === null) return tell(t('people.form.incomplete'));
    const known = await getPerson(viewer, fields.code);
    const name = fields.name === '' ? (known?.name ?? '') : fields.name;
    try {
      await savePerson(viewer, { ...fields, name });
    } catch (error) {
      if (error instanceof RangeError) return tell(t('people.form.fault', { fault: told(error.message) }));
      throw error;
    }
    return tell(t(known === null ? 'people.form.added' : 'people.form.changed', { code: fields.code }));
  });
}

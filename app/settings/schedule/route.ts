import type { NextRequest } from 'next/server';
import { z } from 'zod';
import { admit, fieldsOf, leadTo } from '@/app/_shop/admit';
import { saying } from '@/app/_shop/said';
import { demand, REPORT_EVERY, setReportSchedule } from '@/lib/access';
import { words } from '@/app/_words/words';

const PLACE = '/settings';
const wanted = z.object({
  every: z.enum(['never', ...REPORT_EVERY]),
  hour: z.coerce.number().int().min(0).max(23),
});

/** Sets when the report makes itself, or that it does not. */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'change settings');
    const { fields, refused } = await fieldsOf(request, wanted);
    if (refused !== null) return refused;
    const t = words('settings');
    const tell = (text: string) => leadTo(`${PLACE}#report`, [saying(text, PLACE)]);
    if (fields === null) return tell(t('report.refused'));
    const { every, hour } = fields;
    await setReportSchedule(viewer, every === 'never' ? null : { every, hour });
    return tell(every === 'never' ? t('report.stopped') : t('report.set'));
  });
}

import type { NextRequest } from 'next/server';
import { admitToken, reportNow } from '@/lib/interface';

/** The batch report from the figures as they are now. */
export const GET = (request: NextRequest): Promise<Response> =>
  admitToken(request, 'reports:read', reportNow, '/api/v1/report');

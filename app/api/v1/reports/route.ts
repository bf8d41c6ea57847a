import type { NextRequest } from 'next/server';
import { admitToken, listReports } from '@/lib/interface';

/** The reports that were made by themselves, newest first. */
export const GET = (request: NextRequest): Promise<Response> =>
  admitToken(request, 'reports:read', listReports, '/api/v1/reports');

import type { NextRequest } from 'next/server';
import { admitToken, reportOf } from '@/lib/interface';

/** One report that was made by itself. */
export async function GET(
  request: NextRequest,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  const { id } = await params;
  return admitToken(request, 'reports:read', (holder) => reportOf(holder, id), '/api/v1/reports/[id]');
}

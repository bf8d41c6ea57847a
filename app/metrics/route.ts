import type { NextRequest } from 'next/server';
import { admitToken, shopMetrics } from '@/lib/interface';

/** The metrics of this process and of the token's shop. */
export const GET = (request: NextRequest): Promise<Response> =>
  admitToken(request, 'metrics:read', shopMetrics, '/metrics');

import type { Instrumentation } from 'next';

/** The framework calls this once, before it serves: log, report clock, and what a stop has to wait for. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { begin } = await import('@/lib/serving');
  begin();
}

/** A page or endpoint threw: it goes into the log, without the address and without the message. */
export const onRequestError: Instrumentation.onRequestError = async (error, request, context) => {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { note } = await import('@/lib/observe');
  note.requestFailed({ route: context.routePath, method: request.method, kind: context.routeType }, error);
};

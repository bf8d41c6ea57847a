import type { NextRequest } from 'next/server';
import { admit } from '@/app/_shop/admit';
import { demand, type Viewer } from '@/lib/access';
import { MAX_FILE_BYTES } from '@/lib/measure';
import { begin } from '../_staging/at-work';
import { CutOff, receive, TooLarge, tooLarge } from '../_staging/receive';
import { openStaging, saveStaged } from '../_staging/staging';

/** A form without scripts is held in memory while it is taken apart, so it may carry less. */
const MAX_FORM_BYTES = 25 * 1000 * 1000;

/**
 * Takes a measurement file: the bytes alone with `?name=` (answers with JSON, `{ at }` or `{ message }`), or a plain
 * form (answers by leading on). Stores nothing but the staged file.
 */
export function POST(request: NextRequest): Promise<Response> {
  return admit(request, async (viewer) => {
    demand(viewer, 'load files');
    const announced = Number(request.headers.get('content-length') ?? 'NaN');
    const length = Number.isFinite(announced) ? announced : null;
    return request.headers.get('content-type')?.startsWith('multipart/form-data') === true
      ? fromForm(request, viewer, length)
      : fromScript(request, viewer, length);
  });
}

async function fromScript(request: NextRequest, viewer: Viewer, length: number | null): Promise<Response> {
  if (length !== null && length > MAX_FILE_BYTES) return refuse(413, tooLarge(length));
  const body = request.body ?? new Blob([]).stream();
  try {
    const id = await stage(viewer, body, nameOf(request.nextUrl.searchParams.get('name')), length);
    return Response.json({ at: `/load/${id}` }, { status: 201 });
  } catch (error) {
    if (error instanceof TooLarge) return refuse(413, error.message);
    if (error instanceof CutOff) return refuse(400, error.message);
    throw error;
  }
}

async function fromForm(request: NextRequest, viewer: Viewer, length: number | null): Promise<Response> {
  if (length === null || length > MAX_FORM_BYTES) return leadTo('/load?refused=form-too-large');
  const file = (await request.formData()).get('file');
  if (!(file instanceof File) || file.name === '') return leadTo('/load?refused=no-file');
  return leadTo(`/load/${await stage(viewer, file.stream(), nameOf(file.name), file.size)}`);
}

/** Writes the file down and has it checked; a large one is still being read when its id is answered. */
async function stage(
  viewer: Viewer,
  body: ReadableStream<Uint8Array>,
  name: string,
  length: number | null,
): Promise<string> {
  const { id, path } = await openStaging();
  const { sha256, bytes } = await receive(body, path, length);
  await saveStaged(id, {
    shop: viewer.shop.id,
    by: viewer.code,
    name,
    bytes,
    sha256,
    checked: null,
    result: null,
  });
  await begin('check', id, bytes);
  return id;
}

/** The last part of a path, at most 200 characters; only ever shown. */
function nameOf(given: string | null): string {
  const last = (given ?? '').split(/[\\/]/).at(-1)?.trim() ?? '';
  return last === '' ? 'measurements.csv' : last.slice(0, 200);
}

function refuse(status: number, message: string): Response {
  return Response.json({ message }, { status });
}

function leadTo(place: string): Response {
  return new Response(null, { status: 303, headers: { Location: place } });
}

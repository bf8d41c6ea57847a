import { z } from 'zod/mini';

const answer = z.union([z.object({ at: z.string() }), z.object({ message: z.string() })]);
type Answer = z.infer<typeof answer>;

/** Sends a file as it is and tells how much has gone: fetch cannot say that, XMLHttpRequest can. */
export function sendFile(file: File, progress: (share: number) => void): Promise<Answer> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/load/upload?name=${encodeURIComponent(file.name)}`);
    request.setRequestHeader('Content-Type', 'application/octet-stream');
    request.responseType = 'text';
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) progress(event.loaded / event.total);
    };
    request.upload.onload = () => progress(1);
    request.onload = () => resolve(read(request.responseText));
    request.onerror = () =>
      resolve({
        message: 'The connection broke while the file was sent. Nothing was stored; send it again.',
      });
    request.send(file);
  });
}

function read(text: string): Answer {
  const failed = { message: 'The file could not be read by the program. Nothing was stored; send it again.' };
  try {
    const parsed = z.safeParse(answer, JSON.parse(text));
    return parsed.success ? parsed.data : failed;
  } catch {
    return failed;
  }
}

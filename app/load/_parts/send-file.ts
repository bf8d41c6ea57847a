type Answer = { at: string } | { message: string };

/** Sends a file as it is and tells how much has gone: fetch cannot say that, XMLHttpRequest can. */
export function sendFile(
  file: File,
  progress: (share: number) => void,
  say: { connectionBroke: string; notRead: string },
): Promise<Answer> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/load/upload?name=${encodeURIComponent(file.name)}`);
    request.setRequestHeader('Content-Type', 'application/octet-stream');
    request.responseType = 'text';
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) progress(event.loaded / event.total);
    };
    request.upload.onload = () => progress(1);
    request.onload = () => resolve(read(request.responseText) ?? { message: say.notRead });
    request.onerror = () => resolve({ message: say.connectionBroke });
    request.send(file);
  });
}

/** Our own route's answer, checked by hand: a schema library would double what this page has to send. */
function read(text: string): Answer | null {
  try {
    const answer: unknown = JSON.parse(text);
    if (typeof answer === 'object' && answer !== null) {
      if ('at' in answer && typeof answer.at === 'string') return { at: answer.at };
      if ('message' in answer && typeof answer.message === 'string') return { message: answer.message };
    }
  } catch {
    // Not JSON: an error page of the server.
  }
  return null;
}

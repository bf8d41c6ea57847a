import { Agent, get } from 'node:http';

export interface Answered {
  milliseconds: number;
  /** As sent, compressed. */
  bytes: number;
}

/**
 * Asks for a page so many times, from so many clients at once that each wait for their answer.
 * @param headers `Cache-Control: no-cache` has the page made anew, also where it could be given again
 */
export async function request(
  url: string,
  headers: Readonly<Record<string, string>>,
  { clients, times }: { clients: number; times: number },
): Promise<Answered[]> {
  const agent = new Agent({ keepAlive: true, maxSockets: clients });
  const all: Answered[] = [];
  let left = times;
  const client = async () => {
    while (left-- > 0) all.push(await ask(url, headers, agent));
  };
  try {
    await Promise.all(Array.from({ length: clients }, client));
  } finally {
    agent.destroy();
  }
  return all;
}

function ask(url: string, headers: Readonly<Record<string, string>>, agent: Agent): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const start = performance.now();
    get(url, { agent, headers: { 'accept-encoding': 'gzip', ...headers } }, (response) => {
      let bytes = 0;
      response.on('data', (chunk: Buffer) => (bytes += chunk.length));
      response.once('error', reject);
      response.once('end', () => {
        if (response.statusCode === 200) resolve({ milliseconds: performance.now() - start, bytes });
        else reject(new Error(`${url} answered with ${response.statusCode ?? 'nothing'}.`));
      });
    }).once('error', reject);
  });
}

import { countRequest, note, stopRunning, takeOverConsole } from '@/lib/observe';
import { startReportClock, stopReportClock } from '@/lib/schedule';
import { closeStore, databaseState } from '@/lib/store';
import { demoSignInNames } from '@/lib/store/accounts';
import { headPage } from '@/lib/shield';
import { asOfOneMoment } from './as-of-one-moment';
import { PagesAgain } from './pages-again';
import { sendWhole } from './send-whole';
import { Turns } from './turns';

/** Pages that are made at a time: one while another waits for the database or to be packed. */
const AT_A_TIME = 3;

/** What the process that listens (lib/commands/server.mjs) is told by the program that it serves. */
export interface Serving {
  /** A request was answered. */
  answered: (method: string, route: string, status: number, seconds: number) => void;
  /** Gives a page again that was made before, where nothing was written since; says whether it did. */
  answerAgain: PagesAgain['give'];
  /** Waits until a page may be made; what is handed back says that it is made. */
  turn: Turns['take'];
  /** Before an answer is made: its security policy, and what the page is told. */
  head: typeof headPage;
  /** Makes an answer, what it asks taken as of one moment where it only tells. */
  asOfOneMoment: typeof asOfOneMoment;
  /** Has a page sent once it is whole; hands back the list for its pieces. */
  sendWhole: typeof sendWhole;
  /** No new requests come: end what still runs, then close the database. */
  stop: () => Promise<void>;
}

const held = globalThis as typeof globalThis & { rehangServing?: Serving };

/** Begins what goes on beside the pages for as long as the program serves. */
export function begin(): void {
  if (held.rehangServing !== undefined) return;
  const pages = new PagesAgain(databaseState);
  const turns = new Turns(AT_A_TIME);
  held.rehangServing = {
    answered: countRequest,
    answerAgain: (request, response) => pages.give(request, response),
    turn: () => turns.take(),
    head: headPage,
    asOfOneMoment,
    sendWhole,
    stop,
  };
  if (process.env.NODE_ENV === 'production') takeOverConsole();
  startReportClock();
  note.started();
  void warn().catch(() => undefined);
}

/** What somebody should know who lets other machines in. */
async function warn(): Promise<void> {
  if (['', '127.0.0.1', '::1', 'localhost'].includes(process.env.HOST ?? '')) return;
  if (process.env.REHANG_ORIGIN?.startsWith('https:') !== true) note.openTo('passwords travel without https');
  if ((await demoSignInNames()).length > 0) note.openTo('the demo shop has public passwords');
}

async function stop(): Promise<void> {
  note.stopping();
  stopReportClock();
  const running = await stopRunning();
  await closeStore();
  note.stopped({ running });
}

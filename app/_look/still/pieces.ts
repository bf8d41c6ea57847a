import { pieceInPlace } from '@/lib/serving/piece-place';

/**
 * The markup of the page that is being made, piece by piece, where it is sent as a whole. The server that listens
 * (lib/commands/server.mjs) opens one list for each such request; what a link within the program loads has none, nor
 * has a browser.
 */
interface Holder {
  getStore: () => string[] | undefined;
}

const ofRequest = (): string[] | undefined =>
  (globalThis as { rehangPieces?: Holder }).rehangPieces?.getStore();

/**
 * What a piece is handed on as. A page that is sent as a whole holds all markup once already: the payload beside it
 * only says which piece it was, and the browser finds it on the page. Else the markup itself.
 */
export function handedOn(markup: string): { piece: number } | { markup: string } {
  const all = ofRequest();
  return all === undefined ? { markup } : { piece: all.push(markup) - 1 };
}

/**
 * What is drawn for a piece of the page that is being made: the server that listens puts its markup there, and so spares
 * React and the framework most of the page. Undefined in a browser.
 */
export const drawnForPiece = (piece: number): string | undefined =>
  ofRequest() === undefined ? undefined : pieceInPlace(piece);

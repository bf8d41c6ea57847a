import { constants, crc32, deflateRawSync } from 'node:zlib';

/** A stretch of a page. */
export interface PagePart {
  plain: Buffer;
  /** The same packed by itself, so that it may stand among others; null where it is packed with its neighbours. */
  packed: Buffer | null;
}

/** Bytes; so few between two parts that are packed stand as they are: to begin takes as long as packing some thousands. */
const NOT_WORTH_IT = 1000;

/** A page packed by more is a tenth smaller and takes twice as long. */
const LEVEL = 3;

/** Without a name, a time or a system: RFC 1952. */
const HEAD = Buffer.from([0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 0xff]);
/** A last block that holds nothing: RFC 1951. */
const LAST_BLOCK = Buffer.from([3, 0]);

/** Packed so that it refers to nothing before it, ends on a whole byte, and others may follow. */
export const packedAlone = (plain: Buffer): Buffer =>
  deflateRawSync(plain, { level: LEVEL, finishFlush: constants.Z_FULL_FLUSH });

/** The parts of a page one after another as one gzip file; of those that are packed nothing is packed again. */
export function packed(parts: readonly PagePart[]): Buffer {
  const file: Buffer[] = [HEAD];
  let waiting: Buffer[] = [];
  const settle = () => {
    const plain = waiting.length === 1 ? waiting[0] : Buffer.concat(waiting);
    waiting = [];
    if (plain === undefined || plain.length === 0) return;
    file.push(...(plain.length < NOT_WORTH_IT ? [headOfStored(plain.length), plain] : [packedAlone(plain)]));
  };
  let [crc, size] = [0, 0];
  for (const part of parts) {
    crc = crc32(part.plain, crc);
    size += part.plain.length;
    if (part.packed === null) waiting.push(part.plain);
    else {
      settle();
      file.push(part.packed);
    }
  }
  settle();
  const tail = Buffer.alloc(8);
  tail.writeUInt32LE(crc, 0);
  tail.writeUInt32LE(size, 4);
  return Buffer.concat([...file, LAST_BLOCK, tail]);
}

/** Before bytes that stand as they are: RFC 1951, 3.2.4. */
function headOfStored(length: number): Buffer {
  const head = Buffer.alloc(5);
  head.writeUInt16LE(length, 1);
  head.writeUInt16LE(0xffff - length, 3);
  return head;
}

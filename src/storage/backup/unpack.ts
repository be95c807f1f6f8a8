/** Bytes out of a Blob: piece by piece, whole, unpacked. Never more than was announced. */
import { Inflate } from 'fflate';
import { photoHashQuick } from '../photos';
import { mostSwelling } from './limits';
import { refuse } from './refusal';
import type { Packed } from './zip-directory';

const pieceBytes = 1024 * 1024;

/** A piece of this swells to 16 MB at the very most before anybody counts. */
const inflatedPieceBytes = 16 * 1024;

export async function* piecesOf(
  file: Blob,
  from: number,
  to: number,
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  for (let at = from; at < to; at += pieceBytes) {
    const end = Math.min(at + pieceBytes, to);
    const bytes = new Uint8Array(await file.slice(at, end).arrayBuffer());
    if (bytes.length !== end - at) return refuse({ code: 'broken-archive', detail: 'cut short' });
    yield bytes;
  }
}

const damaged = ({ name }: Packed): never => refuse({ code: 'part-differs', name });

/** The unpacked bytes as they come; the sum is as announced, or it is refused on the way. */
async function* unpackedPieces(file: Blob, packed: Packed): AsyncGenerator<Uint8Array> {
  const pieces = piecesOf(file, packed.at, packed.at + packed.packedBytes);
  if (!packed.deflated) return yield* pieces;
  const out: Uint8Array[] = [];
  let [given, ended] = [0, false];
  const inflate = new Inflate((bytes, final) => {
    given += bytes.length;
    out.push(bytes);
    ended = final;
  });
  const push = (bytes: Uint8Array, last: boolean): void => {
    try {
      inflate.push(bytes, last);
    } catch {
      damaged(packed);
    }
    if (given > packed.bytes) damaged(packed);
  };
  for await (const piece of pieces)
    for (let at = 0; at < piece.length; at += inflatedPieceBytes) {
      push(piece.subarray(at, at + inflatedPieceBytes), false);
      yield* out.splice(0);
    }
  push(new Uint8Array(0), true);
  yield* out.splice(0);
  if (!ended || given !== packed.bytes) damaged(packed);
}

/**
 * The whole of one file of the archive.
 * @param most bytes; more is refused before anything is unpacked
 * @param wanted the SHA-256 it must have
 * @throws NotTaken
 */
export async function unpack(
  file: Blob,
  packed: Packed,
  most: number,
  wanted: string | null,
): Promise<Uint8Array<ArrayBuffer>> {
  const { name, bytes, packedBytes } = packed;
  if (bytes > most || bytes > packedBytes * mostSwelling)
    return refuse({ code: 'too-large', what: name, most });
  const whole = new Uint8Array(bytes);
  let at = 0;
  for await (const piece of unpackedPieces(file, packed)) {
    whole.set(piece, at);
    at += piece.length;
  }
  if (at !== bytes || (wanted !== null && (await photoHashQuick(whole)) !== wanted)) return damaged(packed);
  return whole;
}

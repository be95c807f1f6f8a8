/** Takes a paper that somebody else made, as it came: a PDF, under the name that it had. Nothing in it is opened or changed. */
import type { FiledPaper } from '../../ledger/entries/files';
import { Line } from '../../ledger/entries/text';
import type { StoreFailure } from '../../storage/failure';
import { isPdf } from '../../storage/picture-type';

type FileRefused =
  | { readonly code: 'not-a-pdf' }
  | { readonly code: 'too-big' }
  /** The phone named the file and then did not give it. */
  | { readonly code: 'not-handed-over' };

/** Why a paper was not kept. */
export type FileFault = FileRefused | { readonly code: 'not-stored'; readonly failure: StoreFailure };

export type PreparedFile =
  | {
      readonly ok: true;
      readonly bytes: Uint8Array<ArrayBuffer>;
      readonly paper: Omit<FiledPaper, 'hash'>;
    }
  | { readonly ok: false; readonly fault: FileRefused };

/** A scan of many pages still fits; all of them are kept on the phone and go into every backup. Reasoned. */
export const mostFileMegabytes = 20;

/** The most of a name that an entry takes, with its ending. */
const longestName = 120;

/** What a name of a file may hold: no part of a path, nothing that turns text round or breaks it. */
const notInNames = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}/\\:*?"<>|]/gu;

/** @example nameKept('scans/../CERT 14\n.PDF') // 'scans .. CERT 14 .pdf' */
export function nameKept(name: string): string {
  const stem = name
    .replace(/\.pdf$/i, '')
    .replace(notInNames, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  // Cut between characters, so that none is halved.
  const cut = [...stem].reduce(
    (so, next) => (so.length + next.length > longestName - 4 ? so : so + next),
    '',
  );
  return Line.parse(`${cut === '' ? 'paper' : cut}.pdf`);
}

async function bytesOf(file: Blob): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

const refused = (code: FileRefused['code']): PreparedFile => ({ ok: false, fault: { code } });

/** The paper to keep of a file, or why there is none. */
export async function prepareFile(file: File): Promise<PreparedFile> {
  if (file.size > mostFileMegabytes * 1e6) return refused('too-big');
  const bytes = await bytesOf(file);
  if (!bytes) return refused('not-handed-over');
  if (!isPdf(bytes)) return refused('not-a-pdf');
  const paper = { type: 'application/pdf', bytes: bytes.length, name: nameKept(file.name) } as const;
  return { ok: true, bytes, paper };
}

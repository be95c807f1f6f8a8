/**
 * Locking a backup with a passphrase, and unlocking it, in the open format of age (age-encryption.org/v1), so that other programs
 * open it too.
 */
import { Decrypter, Encrypter } from 'age-encryption';
import { BlobOfPieces } from './blob-of-pieces';
import { mostArchiveBytes } from './limits';
import { type TellBackup, untold } from './progress';
import { NotTaken, refuse } from './refusal';

/**
 * Every guess at a passphrase costs 2^17 rounds of scrypt and 128 MB of memory. The library's own 2^18 would ask for 256 MB,
 * which the browser of a small phone may not give. Source: OWASP Password Storage Cheat Sheet, scrypt: N=2^17, r=8, p=1 as the
 * strongest of its five. Status: memory.
 */
const workFactor = 17;

const begins = 'age-encryption.org/v1\n';

/** Bytes in which the lock of one passphrase ends, with room to spare. */
const mostHeaderBytes = 1024;

const startOf = async (file: Blob, bytes: number): Promise<string> =>
  new TextDecoder('latin1').decode(await file.slice(0, bytes).arrayBuffer());

export const isLocked = async (file: Blob): Promise<boolean> =>
  (await startOf(file, begins.length)) === begins;

async function gathered(
  stream: ReadableStream<Uint8Array>,
  type: string,
  told: (bytes: number) => void,
): Promise<Blob> {
  const blob = new BlobOfPieces();
  const reader = stream.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return blob.blob(type);
    blob.add(value);
    if (blob.size > mostArchiveBytes) refuse({ code: 'too-large', what: 'archive', most: mostArchiveBytes });
    told(blob.size);
  }
}

const of = (bytes: number): number => Math.max(1, bytes);

/** @returns an age file over the whole of `file` */
export async function lock(file: Blob, passphrase: string, tell: TellBackup = untold): Promise<Blob> {
  // Before the rounds of scrypt, which nothing can be told from.
  tell({ stage: 'locking', done: 0, of: of(file.size) });
  const encrypter = new Encrypter();
  encrypter.setScryptWorkFactor(workFactor);
  encrypter.setPassphrase(passphrase);
  const locked = await encrypter.encrypt(file.stream());
  return gathered(locked, 'application/octet-stream', (done) =>
    tell({ stage: 'locking', done, of: of(file.size) }),
  );
}

/** The lock's own lines, before the bytes that it locks. */
async function expectPassphrase(file: Blob): Promise<void> {
  const [, stanza = ''] = (await startOf(file, mostHeaderBytes)).split('\n');
  if (!stanza.startsWith('-> scrypt ')) refuse({ code: 'locked-otherwise' });
}

/** @throws NotTaken */
export async function unlock(file: Blob, passphrase: string, tell: TellBackup = untold): Promise<Blob> {
  await expectPassphrase(file);
  tell({ stage: 'unlocking', done: 0, of: of(file.size) });
  const decrypter = new Decrypter();
  decrypter.addPassphrase(passphrase);
  let opened: ReadableStream<Uint8Array>;
  try {
    opened = await decrypter.decrypt(file.stream());
  } catch (error) {
    if (error instanceof RangeError) throw error;
    return refuse({ code: 'passphrase-wrong' });
  }
  try {
    return await gathered(opened, 'application/zip', (done) =>
      tell({ stage: 'unlocking', done, of: of(file.size) }),
    );
  } catch (error) {
    if (error instanceof NotTaken || error instanceof RangeError || error instanceof DOMException)
      throw error;
    return refuse({ code: 'locked-part-damaged' });
  }
}

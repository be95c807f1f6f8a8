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

/**
 * The lines of a lock with one passphrase and nothing else: salt, work factor, the key within, and a code over all of it.
 * Source: C2SP age, "scrypt recipient stanza" (it must be the only one) and "header". Status: memory.
 */
const header =
  /^age-encryption\.org\/v1\n-> scrypt [A-Za-z\d+/]{22} ([1-9]\d*)\n[A-Za-z\d+/]{43}\n--- [A-Za-z\d+/]{43}\n/;

/** 2^20 rounds take 1 GB of memory; the library takes no more either. */
const mostWorkFactor = 20;

/** Behind the header: a nonce, and at the least the code over an empty piece. */
const leastBehind = 16 + 16;

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
  encrypter.setPassphrase(passphrase.normalize('NFC'));
  const locked = await encrypter.encrypt(file.stream());
  return gathered(locked, 'application/octet-stream', (done) =>
    tell({ stage: 'locking', done, of: of(file.size) }),
  );
}

/**
 * Told before anybody types: a lock that no passphrase opens.
 * @throws NotTaken
 */
export async function expectPassphrase(file: Blob): Promise<void> {
  const start = await startOf(file, mostHeaderBytes);
  const [, stanza, ...more] = start.split('\n');
  if (more.length > 0 && stanza?.startsWith('-> ') && !stanza.startsWith('-> scrypt '))
    refuse({ code: 'locked-otherwise' });
  const [lines = '', factor] = header.exec(start) ?? [];
  if (file.size < lines.length + leastBehind || factor === undefined) refuse({ code: 'lock-damaged' });
  if (Number(factor) > mostWorkFactor) refuse({ code: 'lock-too-strong' });
}

/** Keyboards differ in how they put an accent onto a letter; to a person it is the same passphrase. */
const formsOf = (passphrase: string): ReadonlySet<string> =>
  new Set([passphrase, passphrase.normalize('NFC'), passphrase.normalize('NFD')]);

/** @throws NotTaken */
export async function unlock(file: Blob, passphrase: string, tell: TellBackup = untold): Promise<Blob> {
  tell({ stage: 'unlocking', done: 0, of: of(file.size) });
  const decrypter = new Decrypter();
  for (const form of formsOf(passphrase)) decrypter.addPassphrase(form);
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

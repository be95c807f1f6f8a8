import 'fake-indexeddb/auto';
import { Decrypter, Encrypter } from 'age-encryption';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readBackup } from '../../../../src/storage/backup/read-backup';
import { anotherPhone, backedUp, opened, person, says } from './invented-record';

beforeEach(anotherPhone);
afterEach(anotherPhone);

/** Each byte one character. */
const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.from(text, 'latin1'));

async function lockedText(content = 'nothing', passphrase = 'weir yard six'): Promise<string> {
  const encrypter = new Encrypter();
  encrypter.setScryptWorkFactor(1);
  encrypter.setPassphrase(passphrase);
  return latin(await encrypter.encrypt(content));
}

const codeOf = async (text: string, passphrase?: string): Promise<string> => {
  const result = await readBackup(bytesOf(text), passphrase);
  return result.ok ? 'taken' : result.refusal.code;
};

const stanza = /-> scrypt [^-]*/;
/** For a key: the form of its lines is all that counts here. */
const forKey = `-> X25519 ${'A'.repeat(43)}\n${'B'.repeat(43)}\n`;

describe('a lock that no passphrase opens is told before anybody types one', () => {
  const locks: readonly (readonly [string, string, (text: string) => string])[] = [
    ['that asks for a gigabyte and more', 'lock-too-strong', (t) => t.replace(/ 1\n/, ' 21\n')],
    ['that asks for more than any machine has', 'lock-too-strong', (t) => t.replace(/ 1\n/, ' 30\n')],
    ['with a key', 'locked-otherwise', (t) => t.replace(stanza, forKey)],
    ['with a key or a passphrase', 'lock-damaged', (t) => t.replace(stanza, (s) => `${s}${forKey}`)],
    ['with two passphrases', 'lock-damaged', (t) => t.replace(stanza, (s) => `${s}${s}`)],
    ['that is cut short', 'lock-damaged', (t) => t.slice(0, 60)],
    ['of which only the first line is there', 'lock-damaged', (t) => t.slice(0, 22)],
    ['behind which nothing is', 'lock-damaged', (t) => t.slice(0, t.indexOf('\n', t.indexOf('---')) + 17)],
    ['with a work factor that is none', 'lock-damaged', (t) => t.replace(/ 1\n/, ' 1e1\n')],
  ];

  test.each(locks)('%s', async (_, code, bend) => {
    const text = await lockedText();
    expect(await codeOf(text)).toBe('passphrase-needed');
    expect(await codeOf(bend(text))).toBe(code);
  });
});

test('what is locked and is no backup is told as such', async () => {
  expect(await codeOf(await lockedText('a letter'), 'weir yard six')).toBe('not-a-backup');
  expect(await codeOf(await lockedText(''), 'weir yard six')).toBe('not-a-backup');
});

// Unicode Standard Annex 15: one letter, as a sign of its own (NFC) or as a letter and an accent (NFD).
describe('a passphrase opens it however a keyboard puts its accents', () => {
  const [composed, apart] = ['Wörter'.normalize('NFC'), 'Wörter'.normalize('NFD')];

  test('in another program, by the form that most keyboards give', async () => {
    await says(await opened(), person('Ana'));
    const { file } = await backedUp(apart);
    const decrypter = new Decrypter();
    decrypter.addPassphrase(composed);
    const plain = await decrypter.decrypt(new Uint8Array(await file.arrayBuffer()));
    expect((await readBackup(new Uint8Array(plain))).ok).toBe(true);
  });

  test.each([
    [composed, apart],
    [apart, composed],
  ])('here, by either, whatever another program locked it by', async (locked, typed) => {
    expect(await codeOf(await lockedText('a letter', locked), typed)).toBe('not-a-backup');
    expect(await codeOf(await lockedText('a letter', locked), 'Worter')).toBe('passphrase-wrong');
  });
});

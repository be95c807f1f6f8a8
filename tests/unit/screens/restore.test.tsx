import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Shell } from '../../../src/screens/shell';
import type { Without } from '../../../src/storage/marker';
import { backupHere } from '../../support/backup-here';
import { open, tap, user } from '../../support/hand';
import { shellInMemory } from '../../support/shell-in-memory';
import { anotherPhone, opened } from '../storage/backup/invented-record';

beforeEach(anotherPhone);
afterEach(anotherPhone);

const kept = (name: string) => new File([readFileSync(`tests/unit/storage/kept/${name}`)], name);

function restoring(with_: Partial<Shell['backups']> = {}, more: Partial<Shell> = {}) {
  const { shell } = shellInMemory('2026-05-12T08:00:00.000Z');
  const noted: Without[] = [];
  const backups: Shell['backups'] = {
    ...shell.backups,
    work: () => backupHere(),
    noteWithout: (without) => {
      noted.push(...without);
      return true;
    },
    ...with_,
  };
  open({ ...shell, backups, ...more }, 'record/restore');
  return { noted };
}

const pick = async (file: File) => user.upload(await screen.findByLabelText(/Choose/), file);
const title = (name: string) => screen.findByRole('heading', { level: 1, name });
const button = (name: string) => screen.getByRole('button', { name }) as HTMLButtonElement;

describe('a backup that lacks something in its middle', () => {
  test('is brought in only once that was read and accepted, and it is noted', async () => {
    const { noted } = restoring();
    await pick(kept('backup-2.zip'));
    await title('The backup is whole');
    for (const told of [
      'The record would go on without 1 entry',
      'Made of a record that goes on without: 1 entry that is missing',
      'Made of a record that goes on without: 3 entries that were lost',
      'Made of a record that goes on without: Entry 2, damaged',
      'Made of a record that goes on without: A whole record of 7 entries',
    ])
      expect(screen.getByText(told)).toBeTruthy();
    expect(button('Restore it').disabled).toBe(true);
    await user.click(screen.getByRole('checkbox', { name: 'I know: the record goes on without them' }));
    await tap('Restore it');
    await title('It is brought in');
    expect(screen.getByText('What the record goes on without stands under Record.')).toBeTruthy();
    expect(noted.map(({ what }) => what)).toEqual(['missing', 'lost', 'entry', 'record', 'missing']);
    expect(await (await opened()).database.count('entries')).toBe(3);
  });
});

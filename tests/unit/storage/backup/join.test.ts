import 'fake-indexeddb/auto';
import fc, { type Stream } from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Entry } from '../../../../src/ledger/entries/entry';
import { seal } from '../../../../src/ledger/seal';
import { planRestore } from '../../../../src/storage/backup/plan-restore';
import type { Backup } from '../../../../src/storage/backup/read-backup';
import { restore } from '../../../../src/storage/backup/restore';
import type { Without } from '../../../../src/storage/marker';
import { photoHash } from '../../../../src/storage/photos';
import { checkSoundness } from '../../../../src/storage/soundness';
import { troubleFrom } from '../../../../src/storage/trouble';
import { id } from '../../ledger/scribe';
import {
  anotherPhone,
  backedUp,
  entriesIn,
  monday,
  newId,
  opened,
  person,
  picture,
  read,
} from './invented-record';

beforeEach(anotherPhone);
afterEach(anotherPhone);

/** One entry of a device: a person, or a container with the picture of a number. */
type Line = { readonly picture: number | null; readonly minute: number };

const anyLine: fc.Arbitrary<Line> = fc.record({
  picture: fc.option(fc.integer({ min: 1, max: 3 })),
  minute: fc.integer({ min: 0, max: 59 }),
});
const anyLines = fc.array(anyLine, { maxLength: 4 });

function chain(letter: string, lines: readonly Line[], before: readonly Entry[] = []): readonly Entry[] {
  const entries = [...before];
  for (const line of lines) {
    const counter = entries.length + 1;
    const at = `2026-03-02T08:${String(line.minute).padStart(2, '0')}:00.000Z`;
    const bytes = picture(line.picture ?? 0);
    entries.push(
      seal({
        id: id(`e${letter}`, counter),
        device: id(`d${letter}`, 0),
        counter,
        writtenAt: at,
        happenedAt: at,
        zone: 'Europe/Paris',
        who: null,
        previous: entries.at(-1)?.hash ?? null,
        body:
          line.picture === null
            ? person(`Ana ${counter}`)
            : {
                kind: 'container-marked',
                v: 1,
                containerId: id('c', 1),
                mark: 'contents-doubtful',
                photos: [{ hash: photoHash(bytes), type: 'image/jpeg', bytes: bytes.length }],
              },
      }),
    );
  }
  return entries.slice(before.length);
}

/** A phone with these entries, and with those of the pictures that it has. */
async function phoneWith(entries: readonly Entry[], pictures: readonly number[]) {
  await anotherPhone();
  const phone = await opened();
  for (const entry of entries) await phone.database.add('entries', entry);
  for (const number of pictures) {
    const bytes = picture(number);
    await phone.database.put('photos', { hash: photoHash(bytes), bytes, keptAt: monday });
  }
  return phone;
}

/** @returns what the record goes on without because of it */
async function joins(backup: Backup): Promise<readonly Without[]> {
  const plan = await planRestore('real', backup);
  if (!plan.ok) throw new Error(plan.failure.code);
  const result = await restore(backup, plan.value, { record: 'real', now: monday, newDevice: newId() });
  if (!result.ok) throw new Error(result.failure.code);
  return result.without;
}

const anyPhone = fc.record({ own: anyLines, pictures: fc.uniqueArray(fc.integer({ min: 1, max: 3 })) });

describe('joining the records of two phones', () => {
  test('gives the same whichever is brought into which, and brought in twice changes nothing', async () => {
    await fc.assert(
      fc.asyncProperty(anyLines, anyLines, anyPhone, anyPhone, async (common, since, left, right) => {
        const both = chain('c', common);
        const all = [
          [...both, ...chain('c', since, both), ...chain('a', left.own)],
          [...both, ...chain('b', right.own)],
        ] as const;
        await phoneWith(all[0], left.pictures);
        const ofLeft = await read((await backedUp()).file);
        const rightPhone = await phoneWith(all[1], right.pictures);
        const ofRight = await read((await backedUp()).file);
        const named = new Set([...ofLeft.files, ...ofRight.files].map(({ sha256 }) => sha256));

        await joins(ofLeft);
        const one = await entriesIn(rightPhone);
        const pictures = await rightPhone.database.getAllKeys('photos');
        await joins(ofLeft);
        await joins(ofRight);
        expect(await entriesIn(rightPhone)).toEqual(one);

        const leftPhone = await phoneWith(all[0], left.pictures);
        await joins(ofRight);
        expect(await entriesIn(leftPhone)).toEqual(one);
        expect(one).toHaveLength(new Set(all.flat().map(({ hash }) => hash)).size);
        const there = new Set([...pictures, ...(await leftPhone.database.getAllKeys('photos'))]);
        expect([...named].filter((hash) => !there.has(hash))).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  test('that lack entries brings all that either has, and leaves nothing wrong that was not told before', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(anyLine, { maxLength: 7 }),
        anyLines,
        fc.infiniteStream(fc.boolean()),
        fc.infiniteStream(fc.boolean()),
        async (common, own, inLeft, inRight) => {
          const all = [...chain('c', common), ...chain('a', own)];
          const part = (has: Stream<boolean>) => all.filter(() => has.next().value);
          const [left, right] = [part(inLeft), part(inRight)];
          await phoneWith(left, []);
          const ofLeft = await read((await backedUp()).file);
          await phoneWith(right, []);
          const ofRight = await read((await backedUp()).file);

          const phone = await phoneWith([], []);
          const without = [...(await joins(ofLeft)), ...(await joins(ofRight))];
          expect(await joins(ofLeft)).toEqual([]);
          const joined = new Set([...left, ...right].map(({ hash }) => hash));
          expect(new Set((await entriesIn(phone)).map((entry) => (entry as Entry).hash))).toEqual(joined);
          const sound = await checkSoundness(phone.database);
          if (!sound.ok) throw new Error(sound.failure.code);
          expect(troubleFrom(sound.value.wrong, sound.value.untold, without)).toEqual([]);
        },
      ),
      { numRuns: 25 },
    );
  });
});

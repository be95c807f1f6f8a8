import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hashOf } from '../../../../src/ledger/seal';
import { type RegisterData, registerText } from '../../../../src/paperwork/register/register-data';
import { verdictWords } from '../../../../src/paperwork/register/verify-words';
import { id, Scribe } from '../../ledger/scribe';
import { anyCase, forged, registerOf, verdictOf, wrongWith } from './any-register';

const runs = { numRuns: 150 };

/** A register and one of the entries that stand in it. */
const withOne = fc
  .tuple(anyCase, fc.nat())
  .map(([made, n]) => {
    const data = registerOf(made);
    return { data, at: data.entries.length === 0 ? 0 : n % data.entries.length };
  })
  .filter(({ data }) => data.entries.length > 0);

const isListed = ({ lines }: RegisterData, number: number): boolean =>
  lines.some((line) => line.number === number);

/** Where the line of an entry begins and ends in the file, in bytes. */
function placeOf(data: RegisterData, at: number) {
  const text = registerText(data);
  const line = JSON.stringify(data.entries[at]);
  const start = new TextEncoder().encode(text.slice(0, text.indexOf(`\n${line}`) + 1)).length;
  return { bytes: new TextEncoder().encode(text), start, length: new TextEncoder().encode(line).length };
}

describe('a register with an entry of a later version', () => {
  /** Its last entry sealed anew with another body, as another version would have sealed it. */
  const later = (body: object, seals = (entry: object) => hashOf(entry)) => {
    const scribe = new Scribe();
    scribe.write({ kind: 'person-added', v: 1, personId: id('aa', 1), name: 'Maren' });
    scribe.write({ kind: 'person-left', v: 1, personId: id('aa', 1) });
    const days = { firstDay: '2026-03-01', lastDay: '2026-03-05' };
    return forged(registerOf({ entries: scribe.entries, days }), (copy) => {
      const held = copy.entries.at(-1);
      if (!held) throw new Error('no entry');
      const { hash: _, ...rest } = { ...(held.entry as object), body } as Record<string, unknown>;
      Object.assign(held, { entry: { ...rest, hash: seals(rest) } });
    });
  };

  test.each([
    ['person-sang', { kind: 'person-sang', v: 1, song: 'low' }],
    ['person-left', { kind: 'person-left', v: 2, personId: id('aa', 1), why: 'moved' }],
    [
      'person-sang',
      {
        kind: 'entry-corrected',
        v: 1,
        corrects: id('ea', 1),
        body: { kind: 'person-sang', v: 1 },
        reason: 'so',
      },
    ],
  ])('is called neither whole nor wrong: %s', async (kind, body) => {
    const verdict = await verdictOf(later(body));
    expect(verdict).toEqual({ whole: null, why: { code: 'newer-entry', number: 2, kind } });
    expect(verdictWords(verdict).lines[0]).toContain('Take a newer one');
  });

  test('is wrong all the same where the entry is not as it was sealed, or its form is none at all', async () => {
    const sang = { kind: 'person-sang', v: 1 };
    expect(await verdictOf(later(sang, () => 'a'.repeat(64)))).toMatchObject({ whole: false });
    expect(await verdictOf(later({ kind: 'person-left', v: 1 }))).toMatchObject({ whole: false });
  });
});

describe('a register that is checked', () => {
  test('is whole as it was made, whatever the record and the days', async () => {
    await fc.assert(
      fc.asyncProperty(anyCase, async (made) => {
        const data = registerOf(made);
        expect(await verdictOf(registerText(data))).toMatchObject({
          whole: true,
          entries: data.entries.length,
          listed: data.lines.length,
          contentHash: data.contentHash,
        });
      }),
      runs,
    );
  });

  test('names the entry in which any byte was flipped', async () => {
    await fc.assert(
      fc.asyncProperty(withOne, fc.nat(), fc.integer({ min: 1, max: 255 }), async ({ data, at }, n, flip) => {
        const { bytes, start, length } = placeOf(data, at);
        const place = start + (n % length);
        bytes[place] = (bytes[place] ?? 0) ^ flip;
        const text = new TextDecoder().decode(bytes);
        const { number = 0, entry } = data.entries[at] ?? {};
        const wrong = await wrongWith(bytes);
        // Its number stands before the entry; where that itself can be read no more, its line in the file is named.
        const prefix = `{"number":${number},`.length;
        if (place < start + prefix) {
          expect(wrong).not.toBeNull();
          if (isListed(data, number) && wrong?.of === 'entry')
            expect([wrong.number === number, wrong.id === entry?.id]).toContain(true);
          if (wrong?.of === 'unreadable')
            expect(wrong).toEqual({
              of: 'unreadable',
              code: 'no-json',
              line: text.slice(0, start).split('\n').length,
            });
        } else expect(wrong).toMatchObject({ of: 'entry', number });
      }),
      { numRuns: 600 },
    );
  });

  test('misses an entry that was taken out, also where its line and the content hash were mended', async () => {
    await fc.assert(
      fc.asyncProperty(withOne, async ({ data, at }) => {
        const number = data.entries[at]?.number ?? 0;
        const without = { ...data, entries: data.entries.filter((_, n) => n !== at) };
        const wrong = await wrongWith(registerText(without));
        if (isListed(data, number))
          expect(wrong).toMatchObject({ of: 'entry', number, why: { code: 'missing' } });
        else expect(wrong).not.toBeNull();
        const mended = forged(without, (copy) => {
          copy.lines = copy.lines.filter((line) => line.number !== number);
        });
        // What a change of a change was of may be older than all that the chain shows: no line of the period names it.
        const isShown =
          data.entries[at]?.why !== 'changed' || data.lines.some(({ changes }) => changes === number);
        if (isShown) expect(await wrongWith(mended)).not.toBeNull();
      }),
      runs,
    );
  });

  test('shows an entry of the period that was hidden behind its hash alone', async () => {
    const ofPeriod = withOne.filter(({ data, at }) => {
      const { writtenAt = '' } = data.entries[at]?.entry ?? {};
      return writtenAt >= data.period.from && writtenAt < data.period.until;
    });
    await fc.assert(
      fc.asyncProperty(ofPeriod, async ({ data, at }) => {
        const { number, entry } = data.entries[at] ?? {};
        if (!entry) return;
        const hidden = forged(data, (copy) => {
          copy.entries = copy.entries.filter((_, n) => n !== at);
          copy.lines = copy.lines.filter((line) => line.number !== number);
          copy.links.push({ device: entry.device, first: entry.counter, hashes: [entry.hash] });
        });
        expect(await wrongWith(hidden)).not.toBeNull();
      }),
      runs,
    );
  });

  test('names one of two entries that were swapped', async () => {
    const withTwo = fc
      .tuple(withOne, fc.nat())
      .map(([{ data, at }, n]) => ({ data, at, other: n % data.entries.length }))
      .filter(({ at, other }) => at !== other);
    await fc.assert(
      fc.asyncProperty(withTwo, fc.boolean(), async ({ data, at, other }, withNumbers) => {
        const [a, b] = [data.entries[at], data.entries[other]];
        if (!a || !b) return;
        const swapped = forged(data, ({ entries }) => {
          entries[at] = withNumbers ? b : { ...b, number: a.number };
          entries[other] = withNumbers ? a : { ...a, number: b.number };
        });
        const verdict = await verdictOf(swapped);
        const named = verdict.whole === false ? verdict.wrong : [];
        expect(
          named.some((one) => one.of === 'entry' && [a.number, b.number].includes(one.number ?? 0)),
        ).toBe(true);
      }),
      runs,
    );
  });

  test('names an entry that stands in it twice', async () => {
    await fc.assert(
      fc.asyncProperty(withOne, fc.nat(), async ({ data, at }, n) => {
        const again = data.entries[at];
        if (!again) return;
        const twice = forged(data, ({ entries }) => {
          entries.splice(n % (entries.length + 1), 0, again);
        });
        const verdict = await verdictOf(twice);
        const wrong = verdict.whole === false ? verdict.wrong : [];
        expect(wrong).toContainEqual(expect.objectContaining({ of: 'entry', number: again.number }));
      }),
      runs,
    );
  });

  test('is not whole when a word of a line or of its head was changed', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyCase.map(registerOf).filter(({ lines }) => lines.length > 0),
        fc.nat(),
        async (data, n) => {
          const at = n % data.lines.length;
          const number = data.lines[at]?.number;
          const [word, standing] = [
            { ...data, lines: data.lines.map((line, i) => (i === at ? { ...line, says: 'nothing' } : line)) },
            forged(data, ({ lines }) => {
              const line = lines[at];
              if (line) line.standing = line.standing === 'withdrawn' ? 'as-written' : 'withdrawn';
            }),
          ];
          expect(await wrongWith(registerText(word))).toMatchObject({ of: 'file', code: 'content-hash' });
          expect(await wrongWith(standing)).toMatchObject({
            number,
            why: { code: 'line-differs', member: 'standing' },
          });
        },
      ),
      runs,
    );
  });
});

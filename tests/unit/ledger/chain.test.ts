import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hashOf, seal } from '../../../src/ledger/seal';
import { verifyChain } from '../../../src/ledger/verify';
import { anyRecord } from './any-record';
import { can, id, pour, Scribe, wash } from './scribe';

const written = () => {
  const scribe = new Scribe();
  scribe.write(can(1));
  scribe.write(wash(1, '3.40'));
  scribe.write(pour(1, 1, '3.40'));
  return scribe.entries;
};

type Leaf = { readonly path: readonly (string | number)[]; readonly value: string | number };

const leaves = (value: unknown, path: readonly (string | number)[] = []): Leaf[] => {
  if (typeof value === 'string' || typeof value === 'number') return [{ path, value }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, [...path, key]));
};

function changed(value: unknown, path: readonly (string | number)[], to: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return to;
  const copy = Array.isArray(value) ? [...value] : { ...(value as object) };
  const fields = copy as Record<string | number, unknown>;
  fields[key] = changed(fields[key], rest, to);
  return copy;
}

describe('the chain of a device', () => {
  test('the hash is SHA-256 over RFC 8785: keys sorted, no spaces', () => {
    // printf '{"a":"é","b":[1,2]}' | sha256sum
    expect(hashOf({ b: [1, 2], a: 'é' })).toBe(
      '9cfb1f938a87f2b8f3b8cc429c7a09116d54f048322742d4c23d4767b85f85da',
    );
  });

  test('an untouched record is whole and tells the head of each chain', () => {
    const entries = written();
    expect(verifyChain(entries)).toEqual({
      whole: true,
      entries: 3,
      heads: [{ device: id('da', 0), counter: 3, hash: entries[2]?.hash }],
    });
  });

  test('a change of any one character anywhere is found', () => {
    const change = fc.gen().map((g) => {
      const entries = g(() => fc.constant(written()));
      const place = g(fc.nat, { max: entries.length - 1 });
      const all = leaves(entries[place]);
      const leaf = g(fc.constantFrom, ...all) as Leaf;
      const text = String(leaf.value);
      const spot = g(fc.nat, { max: text.length - 1 });
      const other = text[spot] === '7' ? '8' : '7';
      const next = text.slice(0, spot) + other + text.slice(spot + 1);
      const to = typeof leaf.value === 'number' ? Number(next) : next;
      return { entries, place, broken: changed(entries[place], leaf.path, to), to, was: leaf.value };
    });
    fc.assert(
      fc.property(change, ({ entries, place, broken, to, was }) => {
        fc.pre(to !== was);
        const verdict = verifyChain(entries.map((entry, n) => (n === place ? broken : entry)));
        expect(verdict).toMatchObject({ whole: false, at: place });
      }),
      { numRuns: 400 },
    );
  });

  test('an entry that was taken out is missed, wherever it stood before the last', () => {
    fc.assert(
      fc.property(anyRecord, fc.nat(29), (entries, place) => {
        const gone = entries[place];
        fc.pre(
          gone !== undefined && entries.some((e) => e.device === gone.device && e.counter > gone.counter),
        );
        const verdict = verifyChain(entries.filter((entry) => entry !== gone));
        expect(verdict).toMatchObject({ whole: false, why: { code: 'counter-gap' } });
      }),
    );
  });

  test('an entry written anew with a right hash of its own breaks the next one', () => {
    const [first, second, third] = written();
    if (!first || !second || !third) throw new Error('three were written');
    const { hash: _, ...rest } = second;
    const forged = seal({ ...rest, body: wash(1, '2.40') });
    expect(verifyChain([first, forged, third])).toEqual({
      whole: false,
      at: 2,
      id: third.id,
      why: { code: 'previous-does-not-match', stated: second.hash, expected: forged.hash },
    });
  });

  test('a field that the schema does not know is found, and where', () => {
    const [first] = written();
    expect(verifyChain([{ ...first, remark: 'x' }])).toMatchObject({
      whole: false,
      at: 0,
      id: first?.id,
      why: { code: 'schema' },
    });
    expect(verifyChain(['not an entry'])).toMatchObject({ whole: false, at: 0, id: null });
  });

  test('blanks put around a text are found though the schema would trim them', () => {
    const scribe = new Scribe();
    scribe.write({ kind: 'person-added', v: 1, personId: id('aa', 1), name: 'Ana' });
    const [entry] = scribe.entries;
    const blank = { ...entry, body: { ...entry?.body, name: 'Ana ' } };
    expect(verifyChain([blank])).toMatchObject({ whole: false, why: { code: 'hash-differs' } });
  });
});

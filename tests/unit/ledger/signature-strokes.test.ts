import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Signature } from '../../../src/ledger/entries/signatures';
import { isDrawn, signatureBox, signaturePath, withStroke } from '../../../src/ledger/signature-strokes';

const signature = (strokes: number[][]) => ({
  name: 'Ada Marsh',
  signedAt: '2026-11-21T09:00:00.000Z',
  width: signatureBox.width,
  height: signatureBox.height,
  strokes,
});

const number = fc.double({ min: -50, max: 700, noNaN: true });
const stroke = fc
  .array(fc.tuple(number, number), { minLength: 1, maxLength: 120 })
  .map((points) => points.flat());
const strokes = fc.array(stroke, { minLength: 1, maxLength: 12 });

const drawn = (all: readonly (readonly number[])[]): number[][] =>
  all.reduce<number[][]>((before, one) => withStroke(before, one), []);

/** A hand that writes: loops on a slope, ten points a loop. */
const writing = Array.from({ length: 90 }, (_, at) => [
  20 + at * 5 + 22 * Math.cos((at * 2 * Math.PI) / 10),
  120 + 40 * Math.sin((at * 2 * Math.PI) / 10),
]).flat();

describe('a signature as it is kept', () => {
  it('is one that the record takes, under 3 kB, whatever was scribbled', () => {
    fc.assert(
      fc.property(strokes, (all) => {
        const kept = signature(drawn(all));
        expect(Signature.safeParse(kept).success).toBe(true);
        expect(JSON.stringify(kept).length).toBeLessThan(3000);
        expect(kept.strokes).toHaveLength(all.length);
      }),
    );
  });

  it('is under 3 kB where every stroke goes all over the box', () => {
    const scribble = Array.from({ length: 12 }, (_, nth) =>
      Array.from({ length: 120 }, (_, at) => [(at * (97 + nth)) % 600, (at * (61 + nth)) % 240]).flat(),
    );
    const kept = signature(drawn(scribble));
    expect(kept.strokes).toHaveLength(12);
    expect(JSON.stringify(kept).length).toBeLessThan(3000);
  });

  it('takes two hundred dots and no more, and stays one that the record takes', () => {
    const kept = drawn(Array.from({ length: 230 }, (_, at) => [at, 9, at, 200]));
    expect(kept).toHaveLength(200);
    expect(Signature.safeParse(signature(kept)).success).toBe(true);
  });

  it('keeps both ends of a stroke, and leaves no point of a hand further out than half the width of its line', () => {
    const [kept = []] = withStroke([], writing);
    expect(kept.slice(0, 2)).toEqual(writing.slice(0, 2).map(Math.round));
    expect(kept.slice(-2)).toEqual(writing.slice(-2).map(Math.round));
    const away = (x: number, y: number): number => {
      let least = Number.POSITIVE_INFINITY;
      for (let at = 0; at + 3 < kept.length; at += 2)
        for (let step = 0; step <= 20; step++) {
          const [ax = 0, ay = 0, bx = 0, by = 0] = kept.slice(at, at + 4);
          least = Math.min(
            least,
            Math.hypot(ax + ((bx - ax) * step) / 20 - x, ay + ((by - ay) * step) / 20 - y),
          );
        }
      return least;
    };
    for (let at = 0; at < writing.length; at += 2)
      expect(away(writing[at] ?? 0, writing[at + 1] ?? 0)).toBeLessThan(signatureBox.pen / 2);
  });

  it('leaves out points of a straight line but its ends', () => {
    const line = Array.from({ length: 50 }, (_, at) => [10 + at * 8, 20 + at * 2]).flat();
    expect(withStroke([], line)).toEqual([[10, 20, 402, 118]]);
  });
});

describe('the path of a signature', () => {
  const places = (path: string): string[] =>
    [...path.matchAll(/(-?[\d.]+ -?[\d.]+)(?=C|M|L|$)/g)].map(([, at]) => at ?? '');

  it('goes through every point that was kept, stroke by stroke, and never leaves the box by more than a hand shakes', () => {
    fc.assert(
      fc.property(strokes, (all) => {
        const kept = drawn(all);
        const path = signaturePath(kept);
        const points = kept.flatMap((one) =>
          one.flatMap((x, at) => (at % 2 === 0 ? [`${x} ${one[at + 1]}`] : [])),
        );
        // A dot is told twice: from itself to itself.
        expect(places(path).filter((at, index, told) => at !== told[index - 1])).toEqual(
          points.filter((at, index, told) => at !== told[index - 1]),
        );
        expect(path.match(/M/g)).toHaveLength(kept.length);
      }),
    );
  });

  it('draws a dot as a line of no length, and nothing as nothing', () => {
    expect(signaturePath([[30, 40]])).toBe('M30 40L30 40');
    expect(signaturePath([])).toBe('');
  });
});

describe('a signature in the record', () => {
  const letters = { name: 'Ada Marsh', signedAt: '2026-11-21T09:00:00.000Z', typed: true };

  it('is drawn, or in letters and says so; never empty, never both', () => {
    expect(isDrawn(Signature.parse(signature([[1, 2]])))).toBe(true);
    expect(isDrawn(Signature.parse(letters))).toBe(false);
    expect(Signature.safeParse(signature([])).success).toBe(false);
    expect(Signature.safeParse({ ...letters, typed: false }).success).toBe(false);
    expect(Signature.safeParse({ ...letters, strokes: [[1, 2]] }).success).toBe(false);
  });
});

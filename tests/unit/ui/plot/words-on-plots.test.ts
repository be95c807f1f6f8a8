import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grown, overlap, within } from '../../../../src/ui/plot/box';
import { placeWords } from '../../../../src/ui/plot/place-words';
import { plotGeometry } from '../../../../src/ui/plot/plot-geometry';
import { spreadApart } from '../../../../src/ui/plot/spread-apart';
import { textWidth, wrapped } from '../../../../src/ui/plot/text-width';
import { plotOfLines, samplePlot } from './sample-plot';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const pairs = <T>(all: readonly T[]): readonly (readonly [T, T])[] =>
  all.flatMap((one, at) => all.slice(at + 1).map((other) => [one, other] as const));

describe('words in a column', () => {
  const wanted = fc.array(fc.record({ middle: number(-50, 400), length: number(1, 30) }), { maxLength: 10 });

  it('never cover each other, keep their order, and stay between the ends', () => {
    fc.assert(
      fc.property(wanted, (all) => {
        const middles = spreadApart(all, 0, 300);
        expect(middles).toBeDefined();
        const placed = all.map((one, at) => ({ ...one, at: middles?.[at] ?? Number.NaN }));
        for (const { at, length } of placed) {
          expect(at - length / 2).toBeGreaterThanOrEqual(-1e-6);
          expect(at + length / 2).toBeLessThanOrEqual(300 + 1e-6);
        }
        for (const [a, b] of pairs(placed)) {
          expect(Math.abs(a.at - b.at)).toBeGreaterThanOrEqual((a.length + b.length) / 2 - 1e-6);
          if (a.middle !== b.middle) expect(a.at < b.at).toBe(a.middle < b.middle);
        }
      }),
    );
  });

  it('stay where they were wanted if they are apart already', () => {
    expect(
      spreadApart(
        [
          { middle: 200, length: 20 },
          { middle: 20, length: 20 },
        ],
        0,
        300,
      ),
    ).toEqual([200, 20]);
  });

  it('have no places where they are too long together', () => {
    expect(spreadApart([{ middle: 5, length: 11 }], 0, 10)).toBeUndefined();
  });
});

describe('words inside a plot', () => {
  const frame = { left: 0, top: 0, right: 300, bottom: 250 };
  const place = fc.tuple(number(0, 300), number(0, 250));

  it('never cover each other or what must be seen, and stay inside', () => {
    const words = fc.array(fc.record({ at: place, width: number(5, 120) }), { minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(words, fc.array(place, { maxLength: 30 }), place, (all, curve, [x, y]) => {
        const dot = { left: x - 5, right: x + 5, top: y - 5, bottom: y + 5 };
        const placed = placeWords(
          all.map(({ at, width }, index) => ({ owner: `${index}`, width, height: 18, anchors: [at] })),
          { frame, curves: curve.map((at) => ({ owner: 'curve', at })), taken: [dot], text: 16 },
        ).flatMap((one) => (one ? [one.box] : []));
        for (const box of placed) {
          expect(within(box, frame)).toBe(true);
          expect(overlap(box, dot)).toBe(false);
        }
        for (const [a, b] of pairs(placed)) expect(overlap(a, b)).toBe(false);
        expect(placed.length).toBe(all.length);
      }),
      { numRuns: 60 },
    );
  });

  it('of eight lines all find a place, on a narrow phone and in type of twice the size', () => {
    const values = fc.array(fc.array(number(0.001, 999), { minLength: 2, maxLength: 8 }), {
      minLength: 8,
      maxLength: 8,
    });
    const size = fc.constantFrom(
      { width: 328, text: 16 },
      { width: 328, text: 28 },
      { width: 640, text: 12 },
    );
    fc.assert(
      fc.property(values, fc.constantFrom('linear' as const, 'log' as const), size, (lines, scale, of) => {
        const drawn = plotGeometry(plotOfLines(lines, scale), of);
        expect(drawn.leftOut).toEqual([]);
        expect(drawn.words).toHaveLength(8);
        const sheet = { left: 0, top: 0, right: drawn.width, bottom: drawn.height };
        for (const box of drawn.words) expect(within(box, sheet)).toBe(true);
        // Words in the column touch, as lines of a text do.
        for (const [a, b] of pairs(drawn.words)) expect(overlap(grown(a, -1e-6), b)).toBe(false);
      }),
      { numRuns: 30 },
    );
  });

  it('of lines that end together stand outside in the order of their ends, with leaders to them', () => {
    const lines = Array.from({ length: 8 }, (_, at) => [100 * at, 500 + at]);
    const drawn = plotGeometry(plotOfLines(lines, 'linear'), { width: 328, text: 16 });
    const words = drawn.texts.filter(({ look }) => look === 'word');
    for (const { x } of words) expect(x).toBeGreaterThan(drawn.frame.right);
    const downwards = words.toSorted((a, b) => a.y - b.y).map(({ text }) => text);
    expect(downwards).toEqual(['Mn', 'Ag', 'Ni', 'Zn', 'Pb', 'Cu', 'Al', 'Fe']);
    const leaders = drawn.paths.filter(({ look }) => look === 'leader').map(({ path }) => path);
    expect(leaders.join('').match(/M/g)?.length).toBeGreaterThan(5);
  });

  it('are all drawn, of every kind of layer', () => {
    for (const size of [
      { width: 328, text: 16 },
      { width: 328, text: 28 },
      { width: 640, text: 12 },
    ]) {
      const { leftOut, texts } = plotGeometry(samplePlot, size);
      expect(leftOut).toEqual([]);
      const said = texts.map(({ text }) => text).join(' ');
      for (const word of [
        'pH likely',
        'aim 9.0',
        'stop here',
        'empty',
        'no higher',
        'Cu',
        'yesterday',
        'next',
      ])
        expect(said).toContain(word);
    }
  });
});

describe('lines of a word', () => {
  it('are no wider than the room, and hold every letter', () => {
    const words = fc.array(fc.stringMatching(/^[a-z]{1,14}$/), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(words, number(20, 200), (all, room) => {
        const lines = wrapped(all.join(' '), 16, room);
        for (const line of lines) expect(textWidth(line, 16)).toBeLessThanOrEqual(room);
        expect(lines.join('').replaceAll(' ', '')).toBe(all.join(''));
      }),
    );
  });
});

/** A signature as papers carry it: the strokes as data, drawn sharp wherever it is printed. */
import * as z from 'zod/mini';
import type { Signature } from '../ledger/entries/signatures';
import { Instant, named, says, text } from './described';
import type { Drawing, Shape } from './document';

const Pixels = z.int().check(z.minimum(1));

const signed = {
  name: text('Name of who signed, in letters.'),
  signedAt: says(Instant, 'When it was given.'),
};

export const SignatureData = named(
  z.union([
    z.strictObject({
      ...signed,
      width: says(Pixels, 'Width of the box that it was drawn in.'),
      height: says(Pixels, 'Height of that box.'),
      strokes: says(
        z.array(z.array(z.int()).check(z.minLength(2))).check(z.minLength(1)),
        'Each stroke as x and y in turn, from the upper left corner of the box.',
      ),
    }),
    z.strictObject({ ...signed, typed: says(z.literal(true), 'The name in letters stands for it.') }),
  ]),
  'Signature',
  'A signature drawn by hand, or a name that stands for one. It proves nothing of who gave it.',
);

export type SignatureData = z.infer<typeof SignatureData>;

/** A plain copy, as the data of a paper has it. */
export const signatureData = (signature: Signature): SignatureData =>
  'typed' in signature
    ? { ...signature }
    : { ...signature, strokes: signature.strokes.map((points) => [...points]) };

type Point = readonly [x: number, y: number];

const pointsOf = (stroke: readonly number[]): readonly Point[] =>
  stroke.flatMap((x, at) => (at % 2 === 0 ? [[x, stroke[at + 1] ?? 0] as const] : []));

const half = (value: number): string => `${Math.round(value * 2) / 2}`;

/** Bows through the middles between points, so that a quick hand shows no corners; one point alone is a dot. */
function shapeOf(stroke: readonly number[], pen: number): Shape {
  const points = pointsOf(stroke);
  const [[x, y] = [0, 0], ...more] = points;
  const last = points.at(-1) ?? [x, y];
  const bows = more
    .slice(0, -1)
    .map(([bx, by], at) => {
      const [nx, ny] = more[at + 1] ?? last;
      return `Q${bx} ${by} ${half((bx + nx) / 2)} ${half((by + ny) / 2)}`;
    })
    .join('');
  const end = more.length === 0 ? 'l0.1 0' : `L${last[0]} ${last[1]}`;
  return { path: `M${x} ${y}${bows}${end}`, stroke: '#000000', strokeWidth: pen, cap: 'round' };
}

/** @param says whose it is, for a reader that cannot see it */
export function signatureDrawing(signature: SignatureData, says: string): Drawing {
  if ('typed' in signature) {
    const text = { x: 0, y: 22, text: signature.name, size: 16, face: 'serif' } as const;
    return { width: 240, height: 30, says, shapes: [], texts: [text] };
  }
  const { width, height, strokes } = signature;
  const pen = Math.max(width, height) / 130;
  return { width, height, says, shapes: strokes.map((stroke) => shapeOf(stroke, pen)) };
}

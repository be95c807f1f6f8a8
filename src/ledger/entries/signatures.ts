/** A signature drawn with a finger: the strokes, not a picture of them, so that it prints sharp and stays small. Or one in letters. */
import * as z from 'zod/mini';
import { Instant } from './moments';
import { Line } from './text';

const Pixels = z.int().check(z.positive(), z.maximum(4000));

/** x and y in turn, in the box that was drawn in. */
const Stroke = z.array(z.int().check(z.minimum(-4000), z.maximum(8000))).check(
  z.minLength(2),
  z.maxLength(2000),
  z.refine((points) => points.length % 2 === 0, 'a point has an x and a y'),
);

/** `name` in letters, since nobody can read the other. */
const DrawnSignature = z.strictObject({
  name: Line,
  signedAt: Instant,
  width: Pixels,
  height: Pixels,
  strokes: z.array(Stroke).check(z.minLength(1), z.maxLength(200)),
});

/** By somebody who does not draw: the name was typed and said to be the signature. Shown as what it is. */
const SignatureInLetters = z.strictObject({ name: Line, signedAt: Instant, typed: z.literal(true) });

export const Signature = z.union([DrawnSignature, SignatureInLetters]);

export type Signature = z.infer<typeof Signature>;

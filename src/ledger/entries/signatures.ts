/** A signature drawn with a finger: the strokes, not a picture of them, so that it prints sharp and stays small. */
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
export const Signature = z.strictObject({
  name: Line,
  signedAt: Instant,
  width: Pixels,
  height: Pixels,
  strokes: z.array(Stroke).check(z.minLength(1), z.maxLength(200)),
});

export type Signature = z.infer<typeof Signature>;

/** Photos that an entry names. The pictures themselves lie beside the entries, by the hash of their bytes. */
import * as z from 'zod/mini';
import { Hash } from './identity';
import { Instant } from './moments';

const Pixels = z.int().check(z.positive());

/**
 * `hash` is the SHA-256 of the bytes kept, `bytes` how many they are; `width` and `height` in pixels as it is shown;
 * `takenAt` only where the camera or the person told it.
 */
export const Photo = z.strictObject({
  hash: Hash,
  type: z.enum(['image/jpeg', 'image/png', 'image/webp']),
  bytes: z.int().check(z.positive()),
  width: z.optional(Pixels),
  height: z.optional(Pixels),
  takenAt: z.optional(Instant),
});
export type Photo = z.infer<typeof Photo>;

/** The most photos of one entry. */
export const mostPhotos = 6;

export const Photos = z.array(Photo).check(z.maxLength(mostPhotos));
export type Photos = z.infer<typeof Photos>;

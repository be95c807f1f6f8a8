/** Published data, and lists of ours, held to their schemas. */
import type * as z from 'zod/mini';

/**
 * The data as its schema says. Throws where it is not so, when it is developed, tested and built; on a phone it is what was
 * built, and no start waits for it to be looked through again.
 * @param schema changes nothing of what it checks
 */
export const checked = <T>(schema: () => z.ZodMiniType<T>, data: unknown): T =>
  import.meta.env.PROD ? (data as T) : schema().parse(data);

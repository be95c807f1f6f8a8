/** What making any paper has in common: what it is made of, what comes of it, and what may keep it from being made. */
import type { Asked } from '../../paperwork/disposal/asked';

/** The state, the moment, the place and the person. */
export type Common = Asked;

export type MadePaper = {
  readonly containerIds: readonly string[];
  readonly codes: readonly string[];
  readonly contentHash: string;
  readonly pdf: File;
  readonly json: File;
};

export type PaperFailure =
  | { readonly code: 'not-loaded' }
  | { readonly code: 'not-made'; readonly name: string };

export type Made =
  | { readonly ok: true; readonly paper: MadePaper }
  | { readonly ok: false; readonly failure: PaperFailure };

/** Bytes on a buffer of their own, as a file wants them. */
export const fileOf = (bytes: Uint8Array, name: string, type: string): File =>
  new File([new Uint8Array(bytes)], name, { type });

const nameOf = (cause: unknown): string => (cause instanceof Error ? cause.name : String(cause));

/** The paper, or what kept it from being made: a part that is not on the phone yet, or a fault of ours. */
export async function madeWith<T>(
  load: () => Promise<T>,
  set: (use: T) => Promise<MadePaper>,
): Promise<Made> {
  let loaded: T;
  try {
    loaded = await load();
  } catch (cause) {
    console.warn('papers cannot be made yet', cause);
    return { ok: false, failure: { code: 'not-loaded' } };
  }
  try {
    return { ok: true, paper: await set(loaded) };
  } catch (cause) {
    console.warn('the paper was not made', cause);
    return { ok: false, failure: { code: 'not-made', name: nameOf(cause) } };
  }
}

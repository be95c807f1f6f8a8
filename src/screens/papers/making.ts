/** What making any paper has in common: what it is made of, what comes of it, and what may keep it from being made. */
import type { Asked } from '../../paperwork/disposal/asked';
import type { Tell } from '../../paperwork/progress';
import type { Job } from './jobs';

/** The state, the moment, the place and the person. */
export type Common = Asked & {
  /** The address that the phone shows: where the pattern on a label leads. */
  readonly appAddress: string;
};

export type PaperFile = {
  readonly name: string;
  readonly mime: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
};

/** What comes of a job, on its way to the page. */
export type PaperFiles = {
  readonly containerIds: readonly string[];
  readonly codes: readonly string[];
  readonly contentHash: string;
  /** The paper itself first; after it the same for programs. */
  readonly files: readonly [PaperFile, ...PaperFile[]];
};

export type MadePaper = Omit<PaperFiles, 'files'> & {
  readonly file: File;
  readonly besides: readonly File[];
};

/** Once it is in the record. */
export type KeptPaper = MadePaper & { readonly paperId: string };

export type PaperFailure =
  | { readonly code: 'not-loaded' }
  /** The phone has no memory for it. */
  | { readonly code: 'too-large' }
  | { readonly code: 'not-made'; readonly name: string }
  | { readonly code: 'cancelled' };

export type Made<T = MadePaper> =
  | { readonly ok: true; readonly paper: T }
  | { readonly ok: false; readonly failure: PaperFailure };

/** A paper on its way. It ends made, failed, cancelled, or with what was thrown. */
export type Making = { readonly made: Promise<Made>; readonly cancel: () => void };

/** Begins a paper; the one way for a screen to make one. @throws where nothing can be begun */
export type MakePaper = (job: Job, common: Common, tell: Tell) => Making;

/** What engines say when there is no room for an array or a text. */
const noRoom = /allocation|array length|string length|out of memory|too large/i;

/** A fault on the way, for words. */
export function failureOf(cause: unknown): PaperFailure {
  if (!(cause instanceof Error)) return { code: 'not-made', name: String(cause) };
  const tooLarge = cause instanceof RangeError && noRoom.test(cause.message);
  return tooLarge ? { code: 'too-large' } : { code: 'not-made', name: cause.name };
}

/** Bytes on a buffer of their own, as they travel. */
export const paperFile = (bytes: Uint8Array, name: string, mime: string): PaperFile => ({
  name,
  mime,
  bytes: new Uint8Array(bytes),
});

/** As a page saves and shares it. */
export function madeOf(made: Made<PaperFiles>): Made {
  if (!made.ok) return made;
  const { files, ...rest } = made.paper;
  const [file, ...besides] = files.map(({ bytes, name, mime }) => new File([bytes], name, { type: mime }));
  if (!file) return { ok: false, failure: { code: 'not-made', name: 'no file' } };
  return { ok: true, paper: { ...rest, file, besides } };
}

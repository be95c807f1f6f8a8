/** Checking a file: what comes of it, and the way for a screen to have one checked. */
import type { VerdictWords } from '../../paperwork/register/verify-words';

/** `name` says where it lay. */
export type CheckedFile = VerdictWords & { readonly name: string };

export type Checked =
  | { readonly ok: true; readonly files: readonly CheckedFile[] }
  | { readonly ok: false; readonly failure: 'not-loaded' | 'not-checked' | 'cancelled' };

export type Checking = { readonly checked: Promise<Checked>; readonly cancel: () => void };

/** Begins to check; the page stays at hand. */
export type CheckFile = (file: File) => Checking;

/** All of it, where it is called. It throws where there is no room for it. */
export async function checkBytes(name: string, bytes: Uint8Array): Promise<readonly CheckedFile[]> {
  const [{ verifyFile }, { verdictWords }, { insidePdf }] = await Promise.all([
    import('../../paperwork/register/verify-file'),
    import('../../paperwork/register/verify-words'),
    import('../../paperwork/register/inside-pdf'),
  ]);
  const checked = await verifyFile(name, bytes, insidePdf);
  return checked.map((one) => ({ name: one.name, ...verdictWords(one.verdict) }));
}

/** Codes that two containers, or two batches, have: two devices that were apart can give the same one. */
import type { Entry } from './entries/entry';
import { standing } from './standing';

export type CodeTwice = { readonly is: 'container' | 'batch'; readonly code: string };

const kinds = ['container-opened', 'batch-opened', 'entry-corrected', 'entry-withdrawn'] as const;

/** Whether it gives a code, or may change what does. Nothing about it need be sure. */
export const isOfCodes = ({ body }: { readonly body?: Partial<Entry['body']> }): boolean =>
  (kinds as readonly unknown[]).includes(body?.kind);

/** The same for what nobody can tell apart: big and small letters are one on a label. */
export const codeKey = ({ is, code }: { readonly is: string; readonly code: string }): string =>
  `${is} ${code.toUpperCase()}`;

/** By `codeKey`, as they were given first. @param log in order; only entries that are of codes count */
export function codesTwice(log: readonly Entry[]): ReadonlyMap<string, CodeTwice> {
  const first = new Map<string, CodeTwice>();
  const twice = new Map<string, CodeTwice>();
  for (const { body } of standing(log).facts) {
    if (body.kind !== 'container-opened' && body.kind !== 'batch-opened') continue;
    const one: CodeTwice = { is: body.kind === 'batch-opened' ? 'batch' : 'container', code: body.code };
    const before = first.get(codeKey(one));
    if (before) twice.set(codeKey(one), before);
    else first.set(codeKey(one), one);
  }
  return twice;
}

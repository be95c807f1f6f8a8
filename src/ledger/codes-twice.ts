/** Codes that two containers, or two batches, have: two devices that were apart can give the same one. */
import type { Entry } from './entries/entry';
import { standing } from './standing';

export type CodeTwice = { readonly is: 'container' | 'batch'; readonly code: string };

const kinds = ['container-opened', 'batch-opened', 'entry-corrected', 'entry-withdrawn'] as const;

/** Whether it gives a code, or may change what does. Nothing about it need be sure. */
export const isOfCodes = ({ body }: { readonly body?: Partial<Entry['body']> }): boolean =>
  (kinds as readonly unknown[]).includes(body?.kind);

/** Big and small letters are the same on a label. @param log in order; only entries that are of codes count */
export function codesTwice(log: readonly Entry[]): readonly CodeTwice[] {
  const given = new Map<string, CodeTwice & { readonly times: number }>();
  for (const { body } of standing(log).facts) {
    if (body.kind !== 'container-opened' && body.kind !== 'batch-opened') continue;
    const is = body.kind === 'container-opened' ? 'container' : 'batch';
    const key = `${is} ${body.code.toUpperCase()}`;
    const { code = body.code, times = 0 } = given.get(key) ?? {};
    given.set(key, { is, code, times: times + 1 });
  }
  return [...given.values()].flatMap(({ is, code, times }) => (times > 1 ? { is, code } : []));
}

/** Codes that two containers, or two batches, have: two devices that were apart can give the same one. */
import type { Entry } from './entries/entry';
import { putAwayRows } from './put-away';
import { standing } from './standing';
import type { State } from './state';

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

/** Worked out once for a state. */
const known = new WeakMap<State, ReadonlySet<string>>();

/** Ids of the containers whose code another has too, which may be gone: nobody can tell them apart by their labels. */
export function containersCodedTwice(state: State): ReadonlySet<string> {
  const before = known.get(state);
  if (before) return before;
  const codes = new Map<string, number>();
  const all = [...state.containers.values()].map(({ body }) => body);
  const rows = putAwayRows(state).filter(({ is }) => is === 'container');
  for (const { code } of [...all, ...rows]) {
    const key = codeKey({ is: 'container', code });
    codes.set(key, (codes.get(key) ?? 0) + 1);
  }
  const twice = all.filter(({ code }) => (codes.get(codeKey({ is: 'container', code })) ?? 0) > 1);
  const found = new Set(twice.map(({ containerId }) => containerId));
  known.set(state, found);
  return found;
}

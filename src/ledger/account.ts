/** One account of a batch as the ledger keeps it: lines on two sides, and what nobody wrote down. */
import { type Closure, closed } from '../chemistry/closure';
import type { Figure } from '../quantities/figure';
import type { Unit } from '../quantities/unit';

/** One line of a side; `streamId` names the waste it is in. */
export type AccountPart<U extends Unit = Unit> = {
  readonly figure: Figure<U>;
  readonly streamId?: string;
};

/** What nobody wrote down; `streamId` names the waste that it is missing of. */
export type Missing = {
  readonly what:
    | 'acid-charged'
    | 'acid-strength'
    | 'water-charged'
    | 'copper-in'
    | 'copper-out'
    | 'copper-of-feed'
    | 'silver-of-feed'
    | 'silver-recovered'
    | 'streams'
    | 'held'
    | 'copper'
    | 'nickel'
    | 'silver'
    | 'acid';
  readonly streamId?: string;
};

export type Account<U extends Unit = Unit> = Closure<U, AccountPart<U>> & {
  readonly missing: readonly Missing[];
  /** Whether something is missing on that side: its sum is at least there. */
  readonly open: { readonly in: boolean; readonly out: boolean };
};

/** What one side, or a part of it, comes to. */
export type Found<U extends Unit> = {
  readonly parts: readonly AccountPart<U>[];
  readonly missing: readonly Missing[];
};

export const together = <U extends Unit>(...all: readonly Found<U>[]): Found<U> => ({
  parts: all.flatMap(({ parts }) => parts),
  missing: all.flatMap(({ missing }) => missing),
});

export const known = <U extends Unit>(figure: Figure<U>, streamId?: string): Found<U> => ({
  parts: [{ figure, ...(streamId === undefined ? {} : { streamId }) }],
  missing: [],
});

export const lacking = <U extends Unit>(what: Missing['what'], streamId?: string): Found<U> => ({
  parts: [],
  missing: [{ what, ...(streamId === undefined ? {} : { streamId }) }],
});

/** An account is whole when nothing of either side is missing; each thing that is missing is named once. */
export function accountOf<U extends Unit>(name: string, ins: Found<U>, outs: Found<U>): Account<U> {
  const missing = [...ins.missing, ...outs.missing].filter(
    (one, i, all) => all.findIndex((o) => o.what === one.what && o.streamId === one.streamId) === i,
  );
  return {
    ...closed(name, ins.parts, outs.parts, missing.length === 0),
    missing,
    open: { in: ins.missing.length > 0, out: outs.missing.length > 0 },
  };
}

/** What can be wrong with a register. */
import type { Entry } from '../../ledger/entries/entry';
import type { Wrong } from '../../ledger/verify';

/** What is wrong with an entry, alone or beside the others. */
export type WhyEntry =
  | Wrong
  /** Its line in the file is no JSON any more; `line` counts from 1. */
  | { readonly code: 'damaged'; readonly line: number }
  | { readonly code: 'missing' }
  | { readonly code: 'not-listed' }
  | { readonly code: 'twice' }
  | { readonly code: 'out-of-order' }
  /** The line that prints it says something else than the entry. */
  | { readonly code: 'line-differs'; readonly member: string };

export type FileWrong =
  | {
      readonly of: 'entry';
      readonly number: number | null;
      readonly id: string | null;
      /** Codes of what it is about, and what it says, by its line; empty where there is none. */
      readonly codes: readonly string[];
      readonly says: string | null;
      readonly why: WhyEntry;
    }
  | { readonly of: 'file'; readonly code: 'schema'; readonly path: string; readonly message: string }
  | { readonly of: 'file'; readonly code: 'content-hash'; readonly stated: string; readonly computed: string }
  /** `not-shown`: the entries right before and after the period do not stand in it whole, so some may be left out. */
  | {
      readonly of: 'chain';
      readonly code: 'head-differs' | 'link-twice' | 'not-shown';
      readonly device: string;
    };

/** An entry of the file as far as it could be read, in the order of the file. */
export type Placed = {
  readonly number: number | null;
  readonly id: string | null;
  readonly entry: Entry | null;
};

export type Found = Pick<Placed, 'number' | 'id'> & { readonly why: WhyEntry };

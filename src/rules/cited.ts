/** A rule of a table as a candidate cites it. */
import { type SourceId, sources } from '../reference/tables';
import type { Citation } from './candidate';

type Ruled = {
  readonly rule: string;
  readonly source: SourceId;
  readonly status: Citation['status'];
};

/** The source's title is where the rule stands, its edition where we read it. */
export const cited = ({ rule, source, status }: Ruled): Citation => ({
  rule,
  cite: sources[source].title,
  status,
  ...(status === 'verified' ? { readIn: sources[source].edition } : {}),
});

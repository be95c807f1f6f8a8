/** What is never done in this trade, and the waste that each rule concerns. */
import * as z from 'zod/mini';
import { checked } from '../reference/checked';
import file from '../reference/never-rules.json';
import { cited, Line, Slug } from './cited';
import { StreamKind } from './stream-kind';

export const NeverRule = z.strictObject({
  id: Slug,
  /** After the word "never". */
  never: Line,
  happens: Line,
  /** For a container's page. */
  short: z.string().check(z.regex(/^Never /), z.maxLength(60)),
  /** Empty: it concerns the person or the fresh acid, no waste. */
  streams: z.array(StreamKind),
  ...cited,
});

const File = z.strictObject({ about: z.string(), rules: z.array(NeverRule) });

export type NeverRule = z.infer<typeof NeverRule>;

export const neverRules: readonly NeverRule[] = checked(() => File, file).rules;

/** Every rule that concerns one of the kinds, once each, in the order of the table. */
export const neverFor = (streamKinds: readonly StreamKind[]): readonly NeverRule[] =>
  neverRules.filter(({ streams }) => streams.some((kind) => streamKinds.includes(kind)));

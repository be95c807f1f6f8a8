/** A person's word on a candidate: the authority, the collector or an adviser says that a class or code is so, or not. */
import * as z from 'zod/mini';
import { Id } from './identity';
import { Day } from './moments';
import { Photos } from './photos';
import { Line, Note } from './text';

export const Scheme = z.enum(['clp', 'eu-hp', 'rcra', 'rcra-ldr', 'california', 'waste-list', 'transport']);

export const CandidateAnswered = z.strictObject({
  kind: z.literal('candidate-answered'),
  v: z.literal(1),
  containerId: Id,
  scheme: Scheme,
  /** As the law writes it; one that the app did not propose is taken as well. */
  code: Line,
  answer: z.enum(['accepted', 'refused']),
  saidBy: Line,
  saidOn: Day,
  document: z.optional(Line),
  photos: z.optional(Photos),
  note: z.optional(Note),
});

export type Scheme = z.infer<typeof Scheme>;
export type CandidateAnswered = z.infer<typeof CandidateAnswered>;

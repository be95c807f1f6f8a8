/**
 * What a hand-over receipt says, as plain data: who gave what to whom, what was agreed or differed, both signatures, and what
 * has come of it since. Version 1 of the shape is read for ever.
 */
import * as z from 'zod/mini';
import { hashOf } from '../../ledger/seal';
import { Day, Hash, Instant, says, text, texts, told } from '../described';
import { Workshop } from '../disposal/disposal-data';
import { headOf, LastEntry, withHash } from '../paper-head';
import { SignatureData } from '../signature-data';

const Part = z.strictObject({
  containerId: text('Identifier of the container in the record.'),
  code: text('Code that stands on the container; hyphens are U+2011.'),
  what: told('What was in it, by the record.'),
  recorded: told('How much it held by the record when it left.'),
  agreed: told('How much the collector read or wrote.'),
  comparison: says(
    z.enum(['as the record says', 'differs', 'not compared', 'not determined']),
    'Whether the two agree: "not compared" where one is a volume and the other a mass, "not determined" where the collector’s is not told.',
  ),
  difference: z.optional(
    text('How far what was agreed is from the record, as a share of it with its range.'),
  ),
  note: z.optional(text('What was written beside it.')),
  since: told('What has come of it: with the collector, back here, or its proof is filed.'),
});

const Returned = z.strictObject({
  on: says(Day, 'The day it came back.'),
  containers: texts('Codes of what came back.'),
  saidBy: told('Who refused it.'),
  why: text('Why.'),
  document: told('Number of the paper about it.'),
});

const Proof = z.strictObject({
  on: says(Day, 'The day that it was filed.'),
  containers: texts('Codes of the containers that it speaks of.'),
  saidBy: told('Who states it.'),
  document: told('Number of the paper.'),
  treatedHow: told('What was done with the waste, as the paper calls it.'),
  datedOn: says(z.union([z.literal('not determined'), Day]), 'The day on the paper.'),
});

const signature = (whose: string) =>
  says(
    z.union([z.literal('not signed'), SignatureData]),
    `Signature of ${whose}; "not signed" where there is none.`,
  );

const content = {
  ...headOf('hand-over-receipt'),
  workshop: says(Workshop, 'The workshop that gave the waste away.'),
  handOverId: text('Identifier of the hand-over in the record.'),
  handedOverAt: says(Instant, 'When it was handed over.'),
  collector: says(
    z.strictObject({
      name: text('Name of the collector.'),
      licence: told('Number of the licence.'),
      contact: told('How to reach the collector.'),
    }),
    'Who took it.',
  ),
  driver: told('Who drove.'),
  vehicle: told('The vehicle.'),
  document: told('Number of the collector’s paper.'),
  destination: told('Where the load goes.'),
  setHash: says(
    z.union([z.literal('not determined'), Hash]),
    'Hash of the content of the set of papers that went with it.',
  ),
  note: z.optional(text('What was written beside the hand-over.')),
  containers: says(z.array(Part).check(z.minLength(1)), 'The containers.'),
  signatures: says(
    z.strictObject({ generator: signature('the generator'), collector: signature('the collector') }),
    'Both signatures.',
  ),
  returned: says(z.array(Returned), 'What was refused and came back.'),
  proofs: says(z.array(Proof), 'Proofs of what became of it.'),
  awaited: texts('Codes of containers of which no proof is filed yet.'),
  proofDue: told('By when the proof must be here.'),
  lastEntry: says(LastEntry, 'The last entry of the record as it stood.'),
};

const ReceiptContent = z.strictObject(content);

/** `contentHash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else. */
export const ReceiptData = withHash(content);

export type ReceiptContent = z.infer<typeof ReceiptContent>;
export type ReceiptData = z.infer<typeof ReceiptData>;

/** The data with its hash; a plain copy without undefined members, as JSON gives it back. */
export function sealedReceipt(said: ReceiptContent): ReceiptData {
  const plain = JSON.parse(JSON.stringify(said)) as ReceiptContent;
  return ReceiptData.parse({ ...plain, contentHash: hashOf(plain) });
}

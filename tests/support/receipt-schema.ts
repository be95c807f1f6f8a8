/** The published form of the data of a hand-over receipt: `public/hand-over-receipt-1.schema.json`. */
import * as z from 'zod/mini';
import { ReceiptData } from '../../src/paperwork/receipt/receipt-data';

/** Ours for ever: whoever keeps a copy of the schema can tell by it which one it is, wherever the file lies. */
const id = 'urn:uuid:5b1d90c7-3f0e-4a57-9b0c-7c2e4d1a8f36';

/** As text, with the newline at its end. */
export function receiptSchema(): string {
  const { $schema, ...schema } = z.toJSONSchema(ReceiptData);
  const told = {
    $schema,
    $id: id,
    title: 'Hand-over receipt, version 1',
    description:
      'Who gave which containers of waste to whom, what the two read of their amounts, both signatures, and what has come of it since. Texts are never empty: what is not known is "not determined". It takes the place of no document that a law asks for.',
    ...schema,
  };
  return `${JSON.stringify(told, null, 2)}\n`;
}

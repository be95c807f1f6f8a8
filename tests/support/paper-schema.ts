/** The published form of the data of a disposal paper: `public/disposal-paper-1.schema.json`. */
import * as z from 'zod/mini';
import { DisposalData } from '../../src/paperwork/disposal/disposal-data';

/** Ours for ever: whoever keeps a copy of the schema can tell by it which one it is, wherever the file lies. */
const id = 'urn:uuid:3d7c1f52-8f0b-4b63-9a53-5a1f6f0d2c71';

/** As text, with the newline at its end. */
export function paperSchema(): string {
  const { $schema, ...schema } = z.toJSONSchema(DisposalData);
  const told = {
    $schema,
    $id: id,
    title: 'Disposal paper, version 1',
    description:
      'Everything that a disposal paper says about containers of waste. Texts are never empty: what is not known is "not determined". Numbers are text, so that no digit is lost, and stand beside their unit. Nothing in it is a classification: whoever takes the waste confirms.',
    ...schema,
  };
  return `${JSON.stringify(told, null, 2)}\n`;
}

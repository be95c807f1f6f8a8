/** The published form of the data of a register: `public/register-1.schema.json`. */
import * as z from 'zod/mini';
import { RegisterData } from '../../src/paperwork/register/register-data';

/** Ours for ever: whoever keeps a copy of the schema can tell by it which one it is, wherever the file lies. */
const id = 'urn:uuid:8a0d6d0e-5b1c-4f0b-9e1c-6f2a44b7c9d3';

/** As text, with the newline at its end. */
export function registerSchema(): string {
  const { $schema, ...schema } = z.toJSONSchema(RegisterData);
  const told = {
    $schema,
    $id: id,
    title: 'Register of a period, version 1',
    description:
      'Every entry of the record of a workshop that happened or was written in a period: as printed lines, and whole with its hash. Texts are never empty: what is not known is "not determined". What an entry says stands in its body as the app stored it; the form of each kind of body is not told here.',
    ...schema,
  };
  return `${JSON.stringify(told, null, 2)}\n`;
}

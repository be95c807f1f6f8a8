/** The published form of the data of the summary of a year: `public/year-paper-1.schema.json`. */
import * as z from 'zod/mini';
import { YearData } from '../../src/paperwork/year/year-data';

/** Ours for ever: whoever keeps a copy of the schema can tell by it which one it is, wherever the file lies. */
const id = 'urn:uuid:5b9e7a34-1d0c-4f67-8a0e-c2d4d7f0b615';

/** As text, with the newline at its end. */
export function yearSchema(): string {
  const { $schema, ...schema } = z.toJSONSchema(YearData);
  const told = {
    $schema,
    $id: id,
    title: 'Summary of a year, version 1',
    description:
      'Waste of a workshop over a time: what arose, what left and with whom, what is here, and what each substance came from and went to. Texts are never empty: what is not known is "not determined". Numbers are text, so that no digit is lost, and stand beside their unit. Nothing in it is a classification or a report: whoever asks for one says what it must hold.',
    ...schema,
  };
  return `${JSON.stringify(told, null, 2)}\n`;
}

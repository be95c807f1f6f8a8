/** The form of a checklist file as JSON Schema, for editors: `checklists/checklist.schema.json`. */
import * as z from 'zod/mini';
import { ListShape } from '../../src/safety/checklist-schema';

/** Marks that the app puts on an item for a workshop; no file says them. */
const marks = ['own', 'range', 'shipped'];

/** As text, with the newline at its end. */
export function listSchema(): string {
  const { $schema, ...schema } = z.toJSONSchema(ListShape, {
    override: ({ jsonSchema }) => {
      for (const mark of marks) if (jsonSchema.properties?.kind) delete jsonSchema.properties[mark];
    },
  });
  const told = {
    $schema,
    title: 'A checklist',
    description: 'The fields are told in README.md. Written from src/safety: npm run list-schema.',
    ...schema,
  };
  return `${JSON.stringify(told, null, 2)}\n`;
}

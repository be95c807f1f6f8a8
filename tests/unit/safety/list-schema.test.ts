import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020';
import { expect, test } from 'vitest';
import { listSchema } from '../../support/list-schema';

const files = readdirSync('checklists').filter((name) => /(?<!\.schema)\.json$/.test(name));
const validate = new Ajv2020({ strict: false }).compile(JSON.parse(listSchema()));
const read = (name: string) => JSON.parse(readFileSync(`checklists/${name}`, 'utf8'));

test('stands beside the lists as the code has it; npm run list-schema writes it anew', async () => {
  await expect(listSchema()).toMatchFileSnapshot('../../../checklists/checklist.schema.json');
});

test.each(files)('%s names it, and another implementation finds the list in order', (name) => {
  const list = read(name);
  expect(list.$schema).toBe('./checklist.schema.json');
  expect(validate(list), JSON.stringify(validate.errors)).toBe(true);
});

test.each([
  ['a word mistyped', { moment: 'beginning' }],
  ['a sketch that nobody drew', { items: [{ ...read('filtration.json').items[0], sketch: 'dragon' }] }],
  ['a mark that only the app puts', { items: [{ ...read('filtration.json').items[0], own: true }] }],
  ['a limit that is no text', { items: [{ ...read('filtration.json').items[5], min: 5 }] }],
  ['a field too many', { colour: 'red' }],
])('an editor shows %s', (_, wrong) => {
  expect(validate({ ...read('filtration.json'), ...wrong })).toBe(false);
});

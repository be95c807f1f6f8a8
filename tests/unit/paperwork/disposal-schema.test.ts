import { Ajv2020 } from 'ajv/dist/2020';
import metaSchema from 'ajv/dist/refs/json-schema-2020-12/schema.json';
import { describe, expect, test } from 'vitest';
import { DisposalData, jsonText } from '../../../src/paperwork/disposal/disposal-data';
import { disposalData } from '../../../src/paperwork/disposal/gather';
import { paperSchema } from '../../support/paper-schema';
import { disposalState } from './disposal-state';

const published = JSON.parse(paperSchema());
/** Its formats come with patterns of their own, which are held. */
const validate = new Ajv2020({ strict: true, validateFormats: false, allErrors: true }).compile(published);

async function real(): Promise<DisposalData> {
  const { state, now, barren, wash } = await disposalState();
  const asked = { state: state.value, now: now.value, zone: 'Europe/Paris', madeBy: 'Maren', demo: false };
  return JSON.parse(jsonText(disposalData([barren, wash], { ...asked, sign: '.' })));
}

type Schema = { readonly [member: string]: unknown };
const isSchema = (value: unknown): value is Schema => typeof value === 'object' && value !== null;

/** Every property of every object in a schema, with its path. */
function propertiesIn(schema: unknown, path = ''): (readonly [string, Schema])[] {
  if (!isSchema(schema)) return [];
  const own = isSchema(schema.properties) ? Object.entries(schema.properties) : [];
  return [
    ...own.map(([name, told]) => [`${path}/${name}`, told as Schema] as const),
    ...Object.entries(schema).flatMap(([name, part]) => propertiesIn(part, `${path}/${name}`)),
  ];
}

describe('the published schema of a disposal paper', () => {
  test('is as the code has it; npm run paper-schema writes it anew', async () => {
    await expect(paperSchema()).toMatchFileSnapshot('../../../public/disposal-paper-1.schema.json');
  });

  test('is a schema of draft 2020-12 with an absolute name of its own', () => {
    expect(published.$schema).toBe(metaSchema.$id);
    expect(new Ajv2020().validateSchema(published)).toBe(true);
    expect(new URL(published.$id).protocol).toBe('urn:');
  });

  test('says of every property what it is', () => {
    const properties = propertiesIn(published);
    expect(properties.length).toBeGreaterThan(100);
    expect(properties.filter(([, { description }]) => !description).map(([path]) => path)).toEqual([]);
  });

  test('lets no object have a property that it does not tell of', () => {
    const open = JSON.stringify(published).match(/"properties":/g)?.length;
    expect(JSON.stringify(published).match(/"additionalProperties":false/g)).toHaveLength(open ?? 0);
  });

  test('finds real data in order', async () => {
    const data = await real();
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
  });

  type Change = (data: DisposalData) => unknown;
  const first = (data: DisposalData, change: object) => ({
    ...data,
    containers: data.containers.map((c, at) => (at === 0 ? { ...c, ...change } : c)),
  });
  const broken: readonly (readonly [string, Change])[] = [
    ['an empty text', (data) => ({ ...data, madeBy: '' })],
    ['a member too many', (data) => ({ ...data, more: 1 })],
    ['no hash', ({ contentHash: _, ...data }) => data],
    ['a hash with a capital', (data) => ({ ...data, contentHash: data.contentHash.toUpperCase() })],
    ['no container', (data) => ({ ...data, containers: [] })],
    ['another version', (data) => ({ ...data, v: 2 })],
    ['a moment without a zone', (data) => ({ ...data, madeAt: '2026-05-17T10:00:00.000' })],
    ['a day that no calendar has', (data) => first(data, { firstWasteIn: '2026-02-30' })],
    ['zero for what is not determined', (data) => first(data, { liquor: 0 })],
    ['nothing for what is not determined', (data) => first(data, { liquor: null })],
    ['a number with an exponent', (data) => withDensity(data, { value: '1.2e0' })],
    ['a number with a decimal comma', (data) => withDensity(data, { lowValue: '1,2' })],
    ['a figure without its unit', (data) => withDensity(data, { unit: undefined })],
  ];
  const withDensity = (data: DisposalData, change: object) =>
    first(data, { density: { ...(data.containers[0]?.density as object), ...change } });

  test.each(broken)('refuses %s, as the code does', async (_, change) => {
    const wrong = JSON.parse(JSON.stringify(change(await real())));
    expect(validate(wrong)).toBe(false);
    expect(DisposalData.safeParse(wrong).success).toBe(false);
  });
});

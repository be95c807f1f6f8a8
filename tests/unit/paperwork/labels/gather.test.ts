import { describe, expect, test } from 'vitest';
import { duesOf } from '../../../../src/ledger/due';
import type { IntentionOf } from '../../../../src/ledger/intention';
import { hashOf } from '../../../../src/ledger/seal';
import { hazardsFromElements } from '../../../../src/paperwork/labels/from-elements';
import { type LabelKnown, labelsData } from '../../../../src/paperwork/labels/gather';
import { labelElements } from '../../../../src/rules/clp/label';
import { barrenLiquor, disposalState } from '../disposal-state';
import { hazards } from './sample-labels';

const appAddress = 'https://a.example/book/#/papers/labels';

type Made = Awaited<ReturnType<typeof disposalState>>;

const of = (
  { state, now, shell }: Made,
  ids: readonly string[],
  known: readonly [string, LabelKnown][] = [],
) =>
  labelsData(
    ids,
    {
      state: state.value,
      now: now.value,
      zone: shell.zone,
      madeBy: 'Maren',
      sign: '.',
      demo: false,
      appAddress,
    },
    new Map(known),
  );
const first = (...asked: Parameters<typeof of>) => {
  const [label] = of(...asked).labels;
  if (!label) throw new Error('no label');
  return label;
};

const states = ({ does }: Made, stated: IntentionOf<'state-local-rule'>['stated']) =>
  does({ do: 'state-local-rule', stated, saidBy: 'County office', saidOn: '2026-03-03' });

function inRecord({ state }: Made, containerId: string) {
  const container = state.value.containers.get(containerId);
  if (!container) throw new Error('no container');
  return container;
}

describe('what a label says of a container', () => {
  test('comes from the record, and what nobody said is not determined', async () => {
    const memory = await disposalState();
    const label = first(memory, [memory.barren]);
    expect(label).toMatchObject({
      code: 'C\u201107',
      link: `https://a.example/book/#/containers/${memory.barren}`,
      law: 'not determined',
      hazards: 'not determined',
      codes: [],
      gas: 'vented',
      // The leach began on 12 May; cementation ended, and the liquor was put in, on the 17th, at 10:00 in Paris.
      start: '2026-05-17',
      mustLeaveBy: 'not determined',
    });
    expect(label.contents).toMatchObject({ are: 'known', name: expect.stringMatching(/^Barren liquor: /) });
    expect(label.contents).toMatchObject({ second: expect.stringMatching(/^pH:\u00a00\.2 by paper/) });
    expect(label.nevers).toContain('Never add ammonia waste');
    const data = of(memory, [memory.barren]);
    expect(data.workshop).toMatchObject({ telephone: 'not determined', generatorNumber: 'not determined' });
  });

  test('counts the storage time by its careful end, a day before the last', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'storage-days', value: { value: '180', unit: 'days' } },
      saidBy: 'County office',
      saidOn: '2026-03-03',
    });
    // 17 May and 180 days is 13 November.
    expect(first(memory, [memory.barren]).mustLeaveBy).toBe('2026-11-12');
  });

  test.each([
    ['us-federal', 'us'],
    ['us-california', 'us'],
    ['eu', 'eu'],
  ] as const)('has the words of the law that was chosen: %s', async (law, words) => {
    const memory = await disposalState();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'laws', value: [law] },
      saidBy: 'County office',
      saidOn: '2026-03-03',
    });
    expect(first(memory, [memory.barren]).law).toBe(words);
  });

  test('carries hazards and codes that others know, a transport entry only once it is confirmed', async () => {
    const memory = await disposalState();
    const candidate = { is: 'candidate' } as const;
    const confirmed = { is: 'confirmed', by: 'A. Marsh', on: '2026-05-12' } as const;
    const codes = (standing: typeof candidate | typeof confirmed) => [
      { list: 'rcra', code: 'D002', standing } as const,
      { list: 'transport', code: 'UN 3264', standing } as const,
    ];
    const printed = (standing: typeof candidate | typeof confirmed) =>
      first(memory, [memory.barren], [[memory.barren, { hazards, codes: codes(standing) }]]);
    expect(printed(candidate).hazards).toEqual(hazards);
    expect(printed(candidate).codes.map(({ code }) => code)).toEqual(['D002']);
    expect(printed(confirmed).codes.map(({ code }) => code)).toEqual(['D002', 'UN 3264']);
  });

  test('counts from the day it came to the store, as the clocks do; beside the work no time runs', async () => {
    const memory = await disposalState();
    const { does, pass } = memory;
    await states(memory, { rule: 'storage-days', value: { value: '180', unit: 'days' } });
    await states(memory, { rule: 'near-work-limit', value: { value: '200', unit: 'L' } });
    await states(memory, { rule: 'laws', value: ['us-federal'] });
    const { body } = await does({
      do: 'open-container',
      code: 'C-11',
      vessel: 'jerrican',
      capacity: { value: '10', unit: 'L' },
      material: 'HDPE',
      cap: 'vented',
      area: 'near-work',
      openedOn: '2026-05-17',
    });
    const id = body.kind === 'container-opened' ? body.containerId : '';
    await memory.logs(id, null, 'barren-liquor', barrenLiquor);
    expect(first(memory, [id])).toMatchObject({
      start: '2026-05-17',
      startIs: 'first-waste',
      mustLeaveBy: 'no time runs',
    });
    pass(10 * 86_400_000);
    await does({ do: 'change-container', containerId: id, area: 'store' });
    const due = duesOf(memory.state.value, inRecord(memory, id), memory.now.value, memory.shell.zone)[0];
    expect(first(memory, [id])).toMatchObject({
      start: '2026-05-27',
      startIs: 'accumulation',
      // 27 May and 180 days is 23 November.
      mustLeaveBy: '2026-11-22',
    });
    expect(due).toMatchObject({ day: '2026-11-22', lastDay: '2026-11-23' });
  });

  test('says nothing of hazards and codes for contents that nobody knows any more', async () => {
    const memory = await disposalState();
    await memory.does({ do: 'mark-container', containerId: memory.barren, mark: 'contents-doubtful' });
    const codes = [{ list: 'rcra', code: 'D002', standing: { is: 'candidate' } }] as const;
    const label = first(memory, [memory.barren], [[memory.barren, { hazards, codes }]]);
    expect(label).toMatchObject({ hazards: 'not determined', codes: [], gas: 'vented' });
    expect(label.contents).toMatchObject({ are: 'doubtful', since: '2026-05-17' });
  });

  test('says that a tight cap has to go, and that an empty one holds nothing', async () => {
    const memory = await disposalState();
    const tight = await memory.opens('C-09', '5', 'tight');
    expect(first(memory, [tight])).toMatchObject({
      contents: { are: 'none' },
      gas: 'none',
      start: 'not determined',
    });
    await memory.logs(tight, null, 'barren-liquor', {
      volume: { value: '1', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    expect(first(memory, [tight]).gas).toBe('fit-vent');
  });

  test('is sealed by the hash of all the rest, once for each container of the record', async () => {
    const memory = await disposalState();
    const { contentHash, ...rest } = of(memory, [memory.barren, memory.barren, 'no such', memory.wash]);
    expect(contentHash).toBe(hashOf(rest));
    expect(rest.labels.map(({ containerId }) => containerId)).toEqual([memory.barren, memory.wash]);
    expect(() => of(memory, ['no such'])).toThrow(/needs a container/);
  });
});

describe('a second label before a container is shipped', () => {
  const candidate = { list: 'rcra', code: 'D002', standing: { is: 'candidate' } } as const;
  const confirmed = {
    list: 'rcra',
    code: 'D011',
    standing: { is: 'confirmed', by: 'A. Marsh', on: '2026-05-12' },
  } as const;
  const ofKnown = (memory: Made, id: string) =>
    first(memory, [id], [[id, { hazards, codes: [candidate, confirmed] }]]);
  const leaves = ({ does }: Made, containerId: string) =>
    does({ do: 'mark-container', containerId, mark: 'leaving' });

  test('comes once it is set aside to leave, with the numbers that somebody confirmed', async () => {
    const memory = await disposalState();
    await states(memory, { rule: 'laws', value: ['us-federal', 'eu'] });
    expect(ofKnown(memory, memory.barren).shipment).toBeUndefined();
    await leaves(memory, memory.barren);
    expect(ofKnown(memory, memory.barren).shipment).toEqual({
      manifestNumber: 'to be written in',
      wasteNumbers: [confirmed],
    });
    expect(first(memory, [memory.barren], [[memory.barren, { codes: [candidate] }]]).shipment).toMatchObject({
      wasteNumbers: 'not determined',
    });
    await memory.does({ do: 'mark-container', containerId: memory.barren, mark: 'staying' });
    expect(ofKnown(memory, memory.barren).shipment).toBeUndefined();
  });

  test.each([
    ['eu', false],
    ['us-california', true],
  ] as const)('where a law of the United States was chosen, and nowhere else: %s', async (law, comes) => {
    const memory = await disposalState();
    await leaves(memory, memory.barren);
    expect(ofKnown(memory, memory.barren).shipment, 'no law was chosen').toBeUndefined();
    await states(memory, { rule: 'laws', value: [law] });
    expect(ofKnown(memory, memory.barren).shipment !== undefined).toBe(comes);
  });

  // 40 CFR 262.32(b): each container of 119 gallons or less.
  test.each([
    [{ value: '119', unit: 'US gal' }, true],
    [{ value: '450', unit: 'L' }, true],
    [{ value: '119.1', unit: 'US gal' }, false],
    [{ value: '451', unit: 'L' }, false],
  ] as const)('on containers up to 119 US gal: $value $unit', async (capacity, comes) => {
    const memory = await disposalState();
    await states(memory, { rule: 'laws', value: ['us-federal'] });
    await memory.does({ do: 'change-container', containerId: memory.barren, capacity });
    await leaves(memory, memory.barren);
    expect(ofKnown(memory, memory.barren).shipment !== undefined).toBe(comes);
  });

  test.each(['damaged', 'held', 'contents-doubtful'] as const)('not on one that is %s', async (mark) => {
    const memory = await disposalState();
    await states(memory, { rule: 'laws', value: ['us-federal'] });
    await leaves(memory, memory.barren);
    await memory.does({ do: 'mark-container', containerId: memory.barren, mark });
    expect(ofKnown(memory, memory.barren).shipment).toBeUndefined();
  });
});

test('a list that a chosen law goes by, and of which there is no code, is told as not determined', async () => {
  const memory = await disposalState();
  expect(first(memory, [memory.barren]).codesNot, 'both, while nobody chose').toEqual(['rcra', 'waste-list']);
  const number = { list: 'rcra', code: 'D002', standing: { is: 'candidate' } } as const;
  expect(first(memory, [memory.barren], [[memory.barren, { codes: [number] }]]).codesNot).toEqual([
    'waste-list',
  ]);
  await states(memory, { rule: 'laws', value: ['eu'] });
  const code = { list: 'waste-list', code: '11 02 07*', standing: { is: 'candidate' } } as const;
  expect(first(memory, [memory.barren]).codesNot).toEqual(['waste-list']);
  expect(first(memory, [memory.barren], [[memory.barren, { codes: [code] }]]).codesNot).toEqual([]);
});

test('the elements that the rules work out stand on a label as they are, further precautions after the first', () => {
  const elements = labelElements([
    { class: 'Skin Corr.', category: '1A', code: 'H314' },
    { class: 'Carc.', category: '1A', code: 'H350i' },
    { class: 'Aquatic Chronic', category: '2', code: 'H411' },
  ]);
  const made = hazardsFromElements(elements, { is: 'candidate' }, ['corrosive']);
  expect(made.pictograms).toEqual(['GHS05', 'GHS08', 'GHS09']);
  expect(made.signal).toBe('Danger');
  expect(made.statements.map(({ code }) => code)).toEqual(['H314', 'H350i', 'H411']);
  expect(made.precautions).toHaveLength(elements.precautions.length + elements.furtherPrecautions.length);
  expect(made.precautions[0]?.code).toBe(elements.precautions[0]?.code);
});

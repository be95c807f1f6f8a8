import { describe, expect, test } from 'vitest';
import { hashOf } from '../../../../src/ledger/seal';
import { hazardsFromElements } from '../../../../src/paperwork/labels/from-elements';
import { type LabelKnown, labelsData } from '../../../../src/paperwork/labels/gather';
import { labelElements } from '../../../../src/rules/clp/label';
import { disposalState } from '../disposal-state';
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
    const known = { mustLeaveBy: '2026-08-01', start: '2026-05-02' };
    expect(first(memory, [memory.barren], [[memory.barren, known]])).toMatchObject(known);
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

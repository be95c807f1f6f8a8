/** What goes on a label: a person's word as confirmed, what the rules make of it as candidates, and never one dressed as the other. */
import { describe, expect, test } from 'vitest';
import { candidatesOf } from '../../../../src/ledger/container-candidates';
import type { Scheme } from '../../../../src/ledger/entries/candidates';
import { labelKnownOf } from '../../../../src/paperwork/labels/known-of';
import { barrenLiquor, disposalState } from '../disposal-state';

type Memory = Awaited<ReturnType<typeof disposalState>>;

const says = (
  { does, barren }: Memory,
  scheme: Scheme,
  code: string,
  answer: 'accepted' | 'refused' = 'accepted',
  saidBy = 'Fenwater',
) =>
  does({ do: 'answer-candidate', containerId: barren, scheme, code, answer, saidBy, saidOn: '2026-05-17' });

function inCan({ state, barren }: Memory) {
  const container = state.value.containers.get(barren);
  if (!container) throw new Error('no container');
  return container;
}

const known = (memory: Memory) => labelKnownOf(memory.state.value, inCan(memory));
const codes = (memory: Memory) => known(memory).hazards?.statements.map(({ code }) => code);

describe('hazards on a label', () => {
  test('are candidates while nobody has said a word, all that fire', async () => {
    const memory = await disposalState();
    const { hazards } = known(memory);
    const all = candidatesOf(memory.state.value, inCan(memory));
    if (typeof all === 'string') throw new Error(all);
    expect(hazards?.standing).toEqual({ is: 'candidate' });
    expect(hazards?.pictograms).toEqual(all.label.pictograms);
    expect(hazards?.signal).toBe('Danger');
    const indication = hazards?.indication ?? [];
    expect(indication).toEqual(expect.arrayContaining(['corrosive', 'HP\u00a07 (carcinogenic)']));
    expect(
      indication.filter((words) => !/[a-z]{4}/.test(words)),
      'no bare code beside words',
    ).toEqual([]);
  });

  test('keep all that fires when somebody confirms one of them, and are confirmed once each is', async () => {
    const memory = await disposalState();
    const before = known(memory).hazards;
    const all = candidatesOf(memory.state.value, inCan(memory));
    if (typeof all === 'string') throw new Error(all);
    const firing = all.clp.candidates.filter(({ standing }) => standing === 'fires');
    const [first, ...others] = firing;
    if (!first || others.length === 0) throw new Error('several fire');
    await says(memory, 'clp', first.code);
    expect(known(memory).hazards).toEqual({ ...before, standing: { is: 'candidate' } });
    for (const { code } of others) await says(memory, 'clp', code);
    expect(known(memory).hazards).toEqual({
      ...before,
      standing: { is: 'confirmed', by: 'Fenwater', on: '2026-05-17' },
    });
  });

  test('leave off what somebody refused', async () => {
    const memory = await disposalState();
    expect(codes(memory)).toContain('H317');
    await says(memory, 'clp', 'Skin Sens. 1 H317', 'refused');
    expect(known(memory).hazards?.standing).toEqual({ is: 'candidate' });
    expect(codes(memory)).not.toContain('H317');
  });

  test('print a class that no table reads as it was given', async () => {
    const memory = await disposalState();
    await says(memory, 'clp', 'H290');
    expect(known(memory).hazards?.statements).toContainEqual({
      code: 'H290',
      text: 'May be corrosive to metals.',
    });
  });

  test('are candidates again once other waste came in, whatever was said of what was in it', async () => {
    const memory = await disposalState();
    await says(memory, 'clp', 'Skin Corr. 1 H314');
    memory.pass(60_000);
    await memory.logs(memory.barren, null, 'barren-liquor', {
      ...barrenLiquor,
      volume: { value: '0.50', unit: 'L' },
    });
    expect(known(memory).hazards?.standing).toEqual({ is: 'candidate' });
  });

  test('are not determined where nobody knows what is in it', async () => {
    const memory = await disposalState();
    await says(memory, 'clp', 'Skin Corr. 1 H314');
    await memory.does({ do: 'mark-container', containerId: memory.barren, mark: 'contents-doubtful' });
    expect(known(memory)).toEqual({});
  });
});

describe('codes on a label', () => {
  test('are candidates of the lists of waste, and no transport entry, while nobody has said a word', async () => {
    const memory = await disposalState();
    const { codes: told } = known(memory);
    expect(told).toContainEqual({ list: 'waste-list', code: '11 02 07*', standing: { is: 'candidate' } });
    expect(told).toContainEqual({ list: 'rcra', code: 'D002', standing: { is: 'candidate' } });
    expect(told?.some(({ list }) => list === 'transport' || list === 'state')).toBe(false);
  });

  test('are what the collector gave instead, each with whose word it is', async () => {
    const memory = await disposalState();
    await says(memory, 'waste-list', '16 05 07*');
    await says(memory, 'transport', 'UN 3264', 'accepted', 'Haulier');
    const { codes: told } = known(memory);
    const on = '2026-05-17';
    expect(told?.filter(({ list }) => list === 'waste-list')).toEqual([
      { list: 'waste-list', code: '16 05 07*', standing: { is: 'confirmed', by: 'Fenwater', on } },
    ]);
    expect(told?.find(({ list }) => list === 'transport')).toEqual({
      list: 'transport',
      code: 'UN 3264',
      standing: { is: 'confirmed', by: 'Haulier', on },
    });
  });
});

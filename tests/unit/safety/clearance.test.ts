import { describe, expect, it } from 'vitest';
import { begin } from '../../../src/safety/checklist-run';
import { contentHash } from '../../../src/safety/checklists';
import {
  Clearance,
  clearanceOf,
  clearanceState,
  clearanceUntil,
  stillRequired,
} from '../../../src/safety/clearance';
import { context, listNamed, T0, walk } from './build-run';

const completedAt = '2026-05-12T10:26:37.000Z';
const { bounds: _, ...here } = context;

function cleared(id: string, over: Partial<typeof here> = {}) {
  const { run } = walk(id);
  const clearance = clearanceOf({ ...run, context: { ...run.context, ...over } }, completedAt);
  if (!clearance) throw new Error('not complete');
  return clearance;
}

describe('a clearance', () => {
  it('ends on the whole minute that stands on its tag', () => {
    const clearance = cleared('filtration');
    expect(clearance.until).toBe('2026-05-12T12:26:00.000Z');
    expect(clearanceState(clearance, '2026-05-12T12:25:59.999Z', here).state).toBe('valid');
    expect(clearanceState(clearance, '2026-05-12T12:26:00.000Z', here)).toEqual({
      state: 'expired',
      since: '2026-05-12T12:26:00.000Z',
    });
  });

  it('names the very list that was asked', () => {
    const list = listNamed('filtration');
    expect(cleared('filtration').list).toEqual({ id: 'filtration', version: 1, hash: contentHash(list) });
    expect(Clearance.safeParse(cleared('filtration')).success).toBe(true);
  });

  it('is not given by a list that is not complete', () => {
    expect(clearanceOf(begin(listNamed('filtration'), context, T0), completedAt)).toBeUndefined();
    expect(clearanceOf(walk('filtration', 'fil-wet').run, completedAt)).toBeUndefined();
  });

  it.each([
    [{ batchId: 'B-19' }, 'different-batch'],
    [{ batchId: null }, 'different-batch'],
    [{ person: 'Tobias' }, 'different-person'],
    [{ place: 'outdoors' }, 'different-place'],
    [{ acid: '2.0' }, 'different-acid'],
  ] as const)('ends when something changes: %o', (change, state) => {
    expect(clearanceState(cleared('filtration'), completedAt, { ...here, ...change }).state).toBe(state);
  });

  it('of no batch, such as the readiness walk, holds for every batch', () => {
    const readiness = cleared('spill-response-readiness', { batchId: null });
    expect(clearanceState(readiness, completedAt, { ...here, batchId: 'B-19' }).state).toBe('valid');
  });
});

describe('leaving a leach', () => {
  const list = listNamed('leach-check');
  it('is cleared to the stated return, never over twelve hours, and four when one stays', () => {
    expect(clearanceUntil(list, completedAt)).toBe('2026-05-12T14:26:00.000Z');
    expect(clearanceUntil(list, completedAt, '2026-05-12T18:00:00.000Z')).toBe('2026-05-12T18:00:00.000Z');
    expect(clearanceUntil(list, completedAt, '2026-05-13T08:00:00.000Z')).toBe('2026-05-12T22:26:00.000Z');
  });
  it('lengthens no other list', () => {
    expect(clearanceUntil(listNamed('filtration'), completedAt, '2026-05-13T08:00:00.000Z')).toBe(
      '2026-05-12T12:26:00.000Z',
    );
  });
});

describe('the readiness walk', () => {
  const list = listNamed('filtration');
  const readiness = cleared('spill-response-readiness', { batchId: null });
  it('is required by the wet steps while it is in date', () => {
    expect(stillRequired(list, [], completedAt, here)).toEqual(['spill-response-readiness']);
    expect(stillRequired(list, [readiness], '2026-05-12T22:25:59.000Z', here)).toEqual([]);
    expect(stillRequired(list, [readiness], '2026-05-12T22:26:00.000Z', here)).toEqual([
      'spill-response-readiness',
    ]);
    expect(stillRequired(list, [readiness], completedAt, { ...here, person: 'Tobias' })).toHaveLength(1);
  });
});

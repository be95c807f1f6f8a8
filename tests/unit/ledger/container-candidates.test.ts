/** What the laws make of what a container holds, and what somebody has said of it. */
import { describe, expect, it } from 'vitest';
import {
  acceptedBesides,
  answerTo,
  bySchemes,
  type ContainerCandidates,
  candidatesOf,
} from '../../../src/ledger/container-candidates';
import type { PlainBody } from '../../../src/ledger/entries/body';
import type { Law } from '../../../src/ledger/entries/local-rules';
import type { State } from '../../../src/ledger/state';
import { mark, rule, solid } from './dated';
import { begun, can, dose, id, litres, pour, put, treatmentEnd, written } from './scribe';

const barren: PlainBody = {
  kind: 'stream-logged',
  v: 1,
  streamId: id('50', 1),
  batchId: null,
  stepId: null,
  stream: 'barren-liquor',
  liquid: {
    volume: litres('2.00'),
    density: { value: '1.10', unit: 'kg/L' },
    findings: (
      [
        ['Cu', '20'],
        ['Ni', '5'],
        ['Ag', '0.012'],
      ] as const
    ).map(([metal, value]) => ({ by: 'assay', metal, concentration: { value, unit: 'g/L' } })),
    freeAcid: [{ by: 'titration', result: { value: '2.54', unit: 'mol/L' } }],
  },
};

const laws = (...value: Law[]) => rule({ rule: 'laws', value });

const said = (code: string, answer: 'accepted' | 'refused'): PlainBody => ({
  kind: 'candidate-answered',
  v: 1,
  containerId: id('c0', 1),
  scheme: 'rcra',
  code,
  answer,
  saidBy: 'Collector',
  saidOn: '2026-03-02',
});

const start = [barren, can(1), pour(1, 1, '2.00')] as const;

const state = (...bodies: readonly PlainBody[]): State => written(...start, ...bodies);

function inCan(of: State) {
  const container = of.containers.get(id('c0', 1));
  if (!container) throw new Error('no container');
  return container;
}

function known(of: State): ContainerCandidates {
  const all = candidatesOf(of, inCan(of));
  if (typeof all === 'string') throw new Error(all);
  return all;
}

const codes = (all: readonly { code: string; standing: string }[] | undefined, standing: string) =>
  all?.filter((one) => one.standing === standing).map(({ code }) => code);

describe('candidates of a barren liquor', () => {
  it('are corrosive and toxic by silver under federal law, with lead and barium open', () => {
    const { rcra } = known(state(laws('us-federal')));
    expect(codes(rcra, 'fires')).toEqual(['D002', 'D011']);
    expect(codes(rcra, 'judgement')).toEqual(['D001']);
    expect(codes(rcra, 'open')).toEqual(expect.arrayContaining(['D005', 'D008']));
  });

  it('come from the laws that were chosen alone, and from more than one while none was', () => {
    expect(known(state(laws('eu'))).rcra).toBeUndefined();
    expect(known(state(laws('us-california'))).euHp).toBeUndefined();
    const careful = known(state());
    expect(careful.rcra).toBeDefined();
    expect(careful.euHp).toBeDefined();
  });

  it('have the hazardous properties of its acid, copper and nickel, and an entry of the list that rests on them', () => {
    const { euHp, wasteList } = known(state(laws('eu')));
    expect(codes(euHp, 'fires')).toEqual(expect.arrayContaining(['HP 6', 'HP 7', 'HP 8', 'HP 10', 'HP 14']));
    expect(wasteList?.candidates[0]?.code).toBe('11 02 07*');
  });

  it('go by road as a corrosive liquid first, named by what is in it, and say what the label bears', () => {
    const { transport, label } = known(state());
    expect(transport.candidates[0]?.code).toBe('UN 3264');
    expect(label.pictograms).toContain('GHS05');
    expect(label.mustVent).toBe(true);
  });

  it('are none where nobody knows what is in it', () => {
    const doubted = state(mark(1, 'contents-doubtful'));
    expect(candidatesOf(doubted, inCan(doubted))).toBe('not-determined');
  });
});

describe('the standards of land disposal', () => {
  const sludge = solid(2, '900', 'hydroxide-sludge');
  const ldrOf = (of: State, n: number) => {
    const container = of.containers.get(id('c0', n));
    const all = container && candidatesOf(of, container);
    if (!all || typeof all === 'string') throw new Error('no candidates');
    return all.landDisposal?.map(({ code }) => code);
  };

  it('stay with the sludge of a waste that had the code, though nobody has tested the sludge', () => {
    const limed = [begun(1, 1), dose(1, '300'), treatmentEnd(1)];
    const kept = [sludge, can(2), put(2, 2, '900')];
    expect(ldrOf(state(laws('us-federal'), ...limed, ...kept), 2)).toContain('D011');
    expect(ldrOf(state(laws('us-federal'), ...kept), 2)).not.toContain('D011');
  });

  it('stay with the liquor itself once it is treated', () => {
    expect(ldrOf(state(laws('us-federal'), begun(1, 1), dose(1, '300'), treatmentEnd(1)), 1)).toContain(
      'D011',
    );
  });
});

describe('what somebody has said of a candidate', () => {
  it('stands beside it, the last word alone', () => {
    const of = state(laws('us-federal'), said('D011', 'refused'), said('D011', 'accepted'));
    expect(answerTo(inCan(of), { scheme: 'rcra', code: 'D011' })?.body.answer).toBe('accepted');
    expect(answerTo(inCan(of), { scheme: 'rcra', code: 'D002' })).toBeUndefined();
  });

  it('is kept for a code that the rules did not propose', () => {
    const of = state(laws('us-federal'), said('F006', 'accepted'));
    expect(acceptedBesides(inCan(of), known(of)).map(({ body }) => body.code)).toEqual(['F006']);
  });

  it('holds no more once something else was poured in', () => {
    const more: PlainBody = { ...barren, streamId: id('50', 2) };
    const of = state(laws('us-federal'), said('D002', 'accepted'), more, pour(2, 1, '1.00'));
    expect(answerTo(inCan(of), { scheme: 'rcra', code: 'D002' })?.staleSince).not.toBeNull();
  });

  it('takes what was refused out of the codes that are reportable when they are spilt', () => {
    const before = known(state(laws('us-federal')));
    expect(before.landDisposal?.map(({ code }) => code)).toContain('D011');
    const after = known(state(laws('us-federal'), said('D011', 'refused')));
    const codesOf = ({ rcra }: ContainerCandidates) => codes(rcra, 'fires');
    expect(codesOf(after)).toEqual(codesOf(before));
    expect(JSON.stringify(after.transport.reportable)).not.toContain('D011');
    expect(JSON.stringify(before.transport.reportable)).toContain('D011');
  });

  it('leaves each candidate once in its scheme', () => {
    for (const [, all] of bySchemes(known(state()))) {
      const named = all.map(({ code }) => code);
      expect(new Set(named).size).toBe(named.length);
    }
  });
});

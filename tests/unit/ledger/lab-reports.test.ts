/** What a laboratory found in a container, and how long it speaks of what is in it. */
import { describe, expect, it } from 'vitest';
import { candidatesOf } from '../../../src/ledger/container-candidates';
import { containerFigures } from '../../../src/ledger/container-figures';
import { mixtureOf } from '../../../src/ledger/container-mixture';
import type { PlainBody } from '../../../src/ledger/entries/body';
import type { LabReported } from '../../../src/ledger/entries/lab-reports';
import { flags } from '../../../src/ledger/flags';
import type { State } from '../../../src/ledger/state';
import { rule } from './dated';
import { can, id, litres, pour, put, Scribe, wash, written } from './scribe';

const mgL = (value: string) => ({ value, unit: 'mg/L' }) as const;

/** A day before what the scribe writes: 2 March 2026. */
const report = (results: LabReported['results'], more: Partial<LabReported> = {}): LabReported => ({
  kind: 'lab-reported',
  v: 1,
  containerId: id('c0', 1),
  laboratory: 'Weir Laboratory',
  sampledOn: '2026-03-02',
  results,
  ...more,
});

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
    findings: [{ by: 'assay', metal: 'Cu', concentration: { value: '20', unit: 'g/L' } }],
    freeAcid: [{ by: 'titration', result: { value: '2.54', unit: 'mol/L' } }],
  },
};

const sludge: PlainBody = {
  kind: 'stream-logged',
  v: 1,
  streamId: id('50', 1),
  batchId: null,
  stepId: null,
  stream: 'hydroxide-sludge',
  solid: {
    wetMass: { value: '500', unit: 'g' },
    moisture: { by: 'not-determined' },
    holds: { liquor: 'not-determined' },
  },
};

const start = [rule({ rule: 'laws', value: ['us-federal'] }), barren, can(1), pour(1, 1, '2.00')] as const;

function standing(state: State, code: string): string | undefined {
  const container = state.containers.get(id('c0', 1));
  const all = container && candidatesOf(state, container);
  if (!all || typeof all === 'string') throw new Error('no candidates');
  return all.rcra?.find((one) => one.code === code)?.standing;
}

describe('a report of a laboratory', () => {
  it('decides what nobody asked of the waste: arsenic, cadmium, chromium, mercury, selenium', () => {
    expect(standing(written(...start), 'D006')).toBe('open');
    // Limit 1.0 mg/L (40 CFR 261.24, table 1).
    const tclp = (value: string) => report([{ element: 'Cd', in: 'tclp', level: mgL(value) }]);
    expect(standing(written(...start, tclp('1.4')), 'D006')).toBe('fires');
    expect(standing(written(...start, tclp('0.2')), 'D006')).toBeUndefined();
    expect(standing(written(...start, tclp('0.2')), 'D004')).toBe('open');
  });

  it('says nothing more once water went off, or once another waste came in on a later day', () => {
    const found = report([{ element: 'Cd', in: 'tclp', level: mgL('1.4') }], {
      ph: { value: '2.1', unit: '1' },
    });
    const days = 3 * 24 * 60;
    const told = (...bodies: readonly PlainBody[]) => {
      const scribe = new Scribe();
      for (const body of [...start, found]) scribe.write(body);
      for (const body of bodies) scribe.write(body, days);
      const container = scribe.state.containers.get(id('c0', 1));
      const mixed = container && mixtureOf(scribe.state, container);
      if (!mixed || typeof mixed === 'string') throw new Error('no mixture');
      return [standing(scribe.state, 'D006'), mixed.mixture.pH?.value.toFixed()];
    };
    const dried: PlainBody = { kind: 'water-lost', v: 1, containerId: id('c0', 1), amount: litres('0.5') };
    expect(told()).toEqual(['fires', '2.1']);
    for (const bodies of [[dried], [wash(2, '1.00'), pour(2, 1, '1.00')]]) {
      const [code, pH] = told(...bodies);
      expect(code).toBe('open');
      expect(pH).not.toBe('2.1');
    }
  });

  it('that found none down to a level says that there may be as much as that', () => {
    const below = report([{ element: 'Se', in: 'filtered', level: mgL('0.05'), below: true }]);
    const state = written(...start, below);
    const container = state.containers.get(id('c0', 1));
    const found = container && mixtureOf(state, container);
    if (!found || typeof found === 'string') throw new Error('no mixture');
    const selenium = found.levels.filtered.get('Se');
    expect([selenium?.low.toFixed(), selenium?.high.toFixed()]).toEqual(['0', '0.05']);
    expect(standing(state, 'D010')).toBeUndefined();
  });

  it('gives the pH of what is in it', () => {
    const state = written(...start, report([], { ph: { value: '0.3', unit: '1' } }));
    const container = state.containers.get(id('c0', 1));
    const found = container && mixtureOf(state, container);
    expect(found && typeof found !== 'string' && found.mixture.pH?.value.toFixed()).toBe('0.3');
  });

  it('says nothing any more once something else came in after the sample', () => {
    const scribe = new Scribe();
    for (const body of [...start, can(2)]) scribe.write(body);
    scribe.write(report([{ element: 'Cd', in: 'tclp', level: mgL('0.2') }]));
    expect(standing(scribe.state, 'D006')).toBeUndefined();
    const days = 3 * 24 * 60;
    scribe.write({ ...barren, streamId: id('50', 2) } as PlainBody, days);
    scribe.write(pour(2, 1, '1.00'), days);
    expect(standing(scribe.state, 'D006')).toBe('open');
    expect(scribe.state.containers.get(id('c0', 1))?.reports[0]?.staleSince).not.toBeNull();
  });

  it('of a later sample takes the place of an earlier one, in whatever order they were written', () => {
    const first = report([{ element: 'Cd', in: 'tclp', level: mgL('1.4') }], { sampledOn: '2026-03-01' });
    const later = report([{ element: 'Cd', in: 'tclp', level: mgL('0.2') }]);
    expect(standing(written(...start, first, later), 'D006')).toBeUndefined();
    expect(standing(written(...start, later, first), 'D006')).toBeUndefined();
  });

  it('that could not have seen the limit leaves the code open', () => {
    const below = report([{ element: 'Cd', in: 'filtered', level: mgL('2'), below: true }]);
    expect(standing(written(...start, below), 'D006')).toBe('open');
  });

  it('answers only the law that asks for that measurement; the others stay open', () => {
    const laws = rule({ rule: 'laws', value: ['us-federal', 'us-california'] });
    const state = written(
      laws,
      sludge,
      can(1),
      put(1, 1, '500'),
      report([
        { element: 'Cd', in: 'tclp', level: mgL('0.2') },
        { element: 'Pb', in: 'total', level: { value: '90', unit: 'mg/kg' } },
        { element: 'Ag', in: 'total', level: { value: '120', unit: 'mg/kg' } },
      ]),
    );
    const container = state.containers.get(id('c0', 1));
    const all = container && candidatesOf(state, container);
    if (!all || typeof all === 'string') throw new Error('no candidates');
    const told = [...(all.rcra ?? []), ...(all.california ?? [])]
      .filter(({ code }) => /^D006|^D008|^D011|(Cd|Pb|Ag)$/.test(code))
      .map(({ code, standing: is, lacks }) => [code, is, ...lacks].join(' '));
    // Total of lead under twenty times its 5 mg/L: it cannot fail the test (Method 1311, section 1.2), by little. Silver is over.
    expect(told).toEqual([
      'D008 close',
      'D011 open TCLP of Ag',
      'STLC Ag open WET of Ag',
      'STLC Cd open WET of Cd',
      'STLC Pb open WET of Pb',
      'TTLC Cd open total of Cd',
    ]);
  });
});

describe('a laboratory and the record', () => {
  const copper = (value: string, below?: true): LabReported['results'] => [
    { element: 'Cu', in: 'filtered', level: { value, unit: 'g/L' }, ...(below ? { below } : {}) },
  ];
  const disagreeing = (...bodies: readonly PlainBody[]) =>
    flags(written(...bodies)).filter(({ code }) => code === 'report-disagrees');

  it('that lie further apart than both are uncertain are flagged, with the report', () => {
    expect(disagreeing(...start, report(copper('12')))).toEqual([
      {
        pressing: 'soon',
        about: { containerId: id('c0', 1), entryId: id('ea', start.length + 1) },
        code: 'report-disagrees',
        of: ['Cu'],
      },
    ]);
    expect(disagreeing(...start, report(copper('0.5', true)))).toHaveLength(1);
    expect(disagreeing(...start, report(copper('20.4')))).toEqual([]);
    expect(disagreeing(...start, report(copper('30', true)))).toEqual([]);
  });

  it('do not disagree where the record tells of a part only and the laboratory found more', () => {
    const silent = wash(2, '1.00');
    const mixed = [...start, silent, pour(2, 1, '1.00')] as const;
    // 20 g/L in 2 of 3 L: at least 13 g/L.
    expect(disagreeing(...mixed, report(copper('16')))).toEqual([]);
    expect(disagreeing(...mixed, report(copper('5')))).toHaveLength(1);
  });

  it('that sampled what was in it before say nothing against what is in it now', () => {
    const scribe = new Scribe();
    for (const body of [...start, report(copper('12'))]) scribe.write(body);
    const days = 3 * 24 * 60;
    scribe.write({ ...barren, streamId: id('50', 2) } as PlainBody, days);
    scribe.write(pour(2, 1, '1.00'), days);
    expect(flags(scribe.state).filter(({ code }) => code === 'report-disagrees')).toEqual([]);
  });

  it('leave the load as the evidence of the wastes has it', () => {
    const load = (...bodies: readonly PlainBody[]) =>
      containerFigures(written(...bodies), id('c0', 1))
        .load?.metals.get('Cu')
        ?.figure?.value.toFixed();
    expect(load(...start, report(copper('12')))).toBe(load(...start));
  });
});

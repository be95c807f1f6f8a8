import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rcra } from '../../../../src/reference/rcra-tables';
import type { Candidate } from '../../../../src/rules/candidate';
import type { ElementLevels } from '../../../../src/rules/element-levels';
import { rcraCandidates } from '../../../../src/rules/rcra/candidates';
import { outsideToxicity, totalScreen } from '../../../../src/rules/rcra/toxicity';
import { levelsOf } from '../../../cases/levels-input';
import { noneFoundIn } from '../none-found-in';

type Input = Parameters<typeof levelsOf>[0];
const liquid: Input = { state: 'liquid', aqueous: true, pH: '5', nitrateBearing: false };
const solid: Input = { state: 'solid', aqueous: false, nitrateBearing: false };

const found = (input: Input): readonly Candidate[] => rcraCandidates(levelsOf(input));
const told = (input: Input): readonly string[] =>
  found(input).map(({ code, standing, lacks }) => [code, standing, ...lacks].join(' '));
const only = (input: Input, code: string): Candidate | undefined => found(input).find((c) => c.code === code);

describe('D001', () => {
  it('is for a person wherever there is nitrate, and never ruled out by a number', () => {
    expect(told({ ...liquid, nitrateBearing: true })).toEqual(['D001 judgement']);
    expect(told({ ...solid, nitrateBearing: true })).toEqual(['D001 judgement']);
    expect(told({ ...liquid, nitrateBearing: null })).toEqual(['D001 open nitrate']);
    expect(told(liquid)).toEqual([]);
  });
});

describe('D002', () => {
  it.each([
    ['2', 'fires'],
    ['2.01', 'close'],
    ['2.51', undefined],
    ['11.99', undefined],
    ['12.49', 'close'],
    ['12.5', 'fires'],
    ['-0.3', 'fires'],
  ])('at pH %s: %s', (pH, standing) => {
    expect(only({ ...liquid, pH }, 'D002')?.standing).toBe(standing);
  });

  it('takes the dangerous end of a range, and says which end', () => {
    const ends = (pH: Input['pH']) => only({ ...liquid, pH }, 'D002')?.grounds.map(({ end = 'high' }) => end);
    expect(ends(['1.9', '4'])).toEqual(['low']);
    expect(ends(['9', '12.6'])).toEqual(['high']);
    expect(ends(['1', '13'])).toEqual(['low', 'high']);
  });

  it('stays open without a pH, and of what is not aqueous until steel has been tried', () => {
    expect(told({ ...liquid, pH: null })).toEqual(['D002 open pH']);
    expect(told({ ...liquid, aqueous: false, pH: '1' })).toEqual(['D002 open what it does to steel']);
  });

  it('is no code of a solid, and of a sludge only with free water', () => {
    expect(told({ ...solid, pH: '13' })).toEqual([]);
    expect(told({ ...solid, aqueous: true, pH: '13' })).toEqual([]);
    expect(told({ ...solid, state: 'sludge', pH: '13' })).toEqual([]);
    expect(told({ ...solid, state: 'sludge', aqueous: true, pH: '13' })).toEqual(['D002 fires']);
  });
});

it('D003 is for a person where silver stood in ammonia, or sulfide was put in', () => {
  expect(told({ ...liquid, ammoniacalSilver: true })).toEqual(['D003 judgement']);
  expect(told({ ...liquid, sulfideBearing: true })).toEqual(['D003 judgement']);
});

describe('toxicity of a liquid', () => {
  it('is that of what passes a filter, by the litre, at the limit and not under it', () => {
    expect(told({ ...liquid, dissolved_mg_L: { Ag: '5.0', Pb: '4.99', Ba: '49' } })).toEqual([
      'D008 close',
      'D011 fires',
    ]);
    expect(told({ ...liquid, dissolved_mg_L: { Ag: ['1', '5'] } })).toEqual(['D011 fires']);
  });

  it('knows no copper and no nickel, and says so', () => {
    const input: Input = { ...liquid, dissolved_mg_L: { Cu: '20000', Ni: '5000', Ag: '1' } };
    expect(told(input)).toEqual([]);
    expect(outsideToxicity(levelsOf(input))).toEqual(['Cu', 'Ni']);
  });

  it('is not told by a total of a kilogram', () => {
    expect(told({ ...liquid, total_mg_kg: { Pb: '1' } })).toEqual(['D008 open Pb, filtered']);
  });

  it('leaves open what nobody determined', () => {
    expect(told({ ...liquid, dissolved_mg_L: { Pb: null } })).toEqual(['D008 open Pb']);
    expect(told({ ...liquid, open: ['As', 'Cu'] })).toEqual(['D004 open As']);
  });

  it('known of a part only is at least so much: it fires, or stays open', () => {
    const part = (Pb: string) => told({ ...liquid, dissolved_mg_L: { Pb }, open: ['Pb'] });
    expect([part('5'), part('1')]).toEqual([['D008 fires'], ['D008 open Pb']]);
  });

  it('with half a percent of solids is no longer its own extract', () => {
    const with_ = (solids: string, Pb: string) => told({ ...liquid, solids, dissolved_mg_L: { Pb } });
    expect(with_('0.49', '5')).toEqual(['D008 fires']);
    expect(with_('0.5', '5')).toEqual(['D008 open TCLP of Pb']);
    // It may be half a percent: then what passes the filter is no word on the extract.
    const maybe = told({ ...liquid, solids: ['0.4', '0.6'], dissolved_mg_L: { Pb: '5' } });
    expect(maybe).toEqual(['D008 open TCLP of Pb']);
    // Section 1.3 of the method: so much that no dilution by the other part helps.
    expect(with_('0.5', '7')).toEqual(['D008 fires']);
    // A heavy liquor has fewer litres: only what holds for the heaviest counts.
    expect(with_('0.5', '5.6')).toEqual(['D008 open TCLP of Pb']);
    expect(with_('30', '7')).toEqual(['D008 open TCLP of Pb']);
  });
});

describe('toxicity of a solid', () => {
  it('is that of the leaching test, whatever the total', () => {
    expect(told({ ...solid, total_mg_kg: { Pb: '4200' }, tclp_mg_L: { Pb: '4.9' } })).toEqual(['D008 close']);
    expect(told({ ...solid, total_mg_kg: { Pb: '1' }, tclp_mg_L: { Pb: '5' } })).toEqual(['D008 fires']);
  });

  it('without the test is open from twenty times the limit on, with the number that says so', () => {
    const d011 = only({ ...solid, total_mg_kg: { Ag: '100' } }, 'D011');
    expect([d011?.standing, d011?.lacks, d011?.grounds[0]?.figure.value.toFixed()]).toEqual([
      'open',
      ['TCLP of Ag'],
      '5',
    ]);
    expect(told({ ...solid, total_mg_kg: { Ag: '49' } })).toEqual([]);
    expect(told({ ...solid, total_mg_kg: { Ag: ['10', '100'] } })).toEqual(['D011 open TCLP of Ag']);
  });

  it('of which only a part was determined is not told harmless by its total', () => {
    const levels = levelsOf({ ...solid, total_mg_kg: { Ag: '1' }, open: ['Ag'] });
    expect(totalScreen(levels).get('D011')).toBe('TCLP needed');
    expect(rcraCandidates(levels).map(({ standing }) => standing)).toEqual(['open']);
  });

  it('a sludge that lets liquid go cannot be told harmless by twenty times, as less liquid is put to it', () => {
    const screen = (input: Partial<Input>) =>
      totalScreen(levelsOf({ ...solid, state: 'sludge', total_mg_kg: { Pb: '60' }, ...input })).get('D008');
    expect(screen({})).toBe('cannot fail');
    expect(screen({ aqueous: true })).toBe('TCLP needed');
    expect(screen({ aqueous: true, solids: '90' })).toBe('cannot fail');
    expect(screen({ aqueous: true, solids: '30' })).toBe('TCLP needed');
  });
});

describe('a laboratory that found none', () => {
  const told = (levels: ElementLevels) =>
    rcraCandidates(levels).map(({ code, standing, lacks }) => [code, standing, ...lacks].join(' '));

  it('and could not have seen the limit leaves the code open, and says how finely to look', () => {
    const coarse = noneFoundIn({ ...liquid, dissolved_mg_L: { Pb: ['0', '10'] } });
    expect(told(coarse)).toEqual(['D008 open Pb, filtered to below 5 mg/L']);
    expect(told(noneFoundIn({ ...solid, tclp_mg_L: { Pb: ['0', '10'] } }))).toEqual([
      'D008 open TCLP of Pb to below 5 mg/L',
    ]);
    // The table of 40 CFR 261.24 says "or more": to the limit itself is not fine enough.
    expect(told(noneFoundIn({ ...solid, tclp_mg_L: { Hg: ['0', '0.2'] } }))).toEqual([
      'D009 open TCLP of Hg to below 0.2 mg/L',
    ]);
  });

  it('and would have seen the limit is past it', () => {
    expect(told(noneFoundIn({ ...solid, tclp_mg_L: { Pb: ['0', '0.5'] } }))).toEqual([]);
  });

  it('of a total too coarse for twenty times still waits for the leaching test', () => {
    expect(told(noneFoundIn({ ...solid, total_mg_kg: { Pb: ['0', '90'] } }))).toEqual(['D008 close']);
    expect(told(noneFoundIn({ ...solid, total_mg_kg: { Pb: ['0', '100'] } }))).toEqual([
      'D008 open TCLP of Pb',
    ]);
  });

  it('does not take away what another measurement of the same extract found', () => {
    const both = levelsOf({ ...liquid, dissolved_mg_L: { Pb: '7' }, tclp_mg_L: { Pb: ['0', '10'] } });
    const noneFound = new Set([...both.tclp.values()]);
    expect(told({ ...both, noneFound })).toEqual(['D008 fires']);
  });
});

it('the extract of another test is no answer, and no silence', () => {
  expect(told({ ...solid, wet_mg_L: { Cd: '0.1' } })).toEqual(['D006 open TCLP of Cd']);
});

describe('any waste', () => {
  const level = fc.integer({ min: 0, max: 1_000_000 }).map((n) => `${n / 1000}`);

  it('with more in the liquid never loses a code', () => {
    fc.assert(
      fc.property(level, level, fc.integer({ min: 0, max: 5000 }), (less, more, solids) => {
        const [a, b] = [Number(less), Number(less) + Number(more)];
        const fires = (Pb: number) =>
          only({ ...liquid, solids: `${solids / 100}`, dissolved_mg_L: { Pb: Pb.toFixed(3) } }, 'D008')
            ?.standing === 'fires';
        expect(fires(a) && !fires(b)).toBe(false);
      }),
    );
  });

  it('told harmless by its total would not fail with all of it leached', () => {
    fc.assert(
      fc.property(level, fc.integer({ min: 0, max: 100 }), (Ag, solids) => {
        const input: Input = {
          ...solid,
          state: 'sludge',
          aqueous: true,
          solids: `${solids}`,
          total_mg_kg: { Ag },
        };
        const litres = (100 - solids) / 100 / 1.3 + (20 * solids) / 100;
        if (totalScreen(levelsOf(input)).get('D011') === 'cannot fail')
          expect(Number(Ag) / litres).toBeLessThan(5 + 1e-9);
      }),
    );
  });
});

it('a pound of silver nitrate is to be reported, and no more of what is D011', () => {
  const pounds = ['AgNO3', 'D011', 'D008', 'D001', 'HNO3'].map((named) => rcra.reportable.values[named]);
  expect(pounds).toEqual(['1', '1', '10', '100', '1000']);
});

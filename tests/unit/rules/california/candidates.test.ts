import { describe, expect, it } from 'vitest';
import { californiaCandidates } from '../../../../src/rules/california/candidates';
import type { ElementLevels } from '../../../../src/rules/element-levels';
import { levelsOf } from '../../../cases/levels-input';
import { noneFoundIn } from '../none-found-in';

type Input = Parameters<typeof levelsOf>[0];
const of = (levels: ElementLevels): readonly string[] =>
  californiaCandidates(levels).map(({ code, standing, lacks }) => [code, standing, ...lacks].join(' '));
const told = (input: Input): readonly string[] => of(levelsOf({ pH: '7', ...input }));

describe('California', () => {
  it('takes the filtered liquid for the extract, at the threshold and not under it', () => {
    expect(told({ state: 'liquid', dissolved_mg_L: { Cu: '25', Ni: '19.9', Pd: '900' } })).toEqual([
      'STLC Cu fires',
      'STLC Ni close',
    ]);
  });

  it('a liquid with solids is not its own extract', () => {
    expect(told({ state: 'liquid', solids: '2', dissolved_mg_L: { Cu: '25' } })).toEqual([
      'STLC Cu open WET of Cu',
    ]);
    expect(told({ state: 'liquid', solids: '2', dissolved_mg_L: { Cu: '90' } })).toEqual(['STLC Cu fires']);
  });

  it('holds the total of a kilogram against its own threshold, and asks for the test from ten times the soluble one', () => {
    expect(told({ state: 'solid', total_mg_kg: { Ag: '500', Cu: '249' } })).toEqual([
      'STLC Ag open WET of Ag',
      'TTLC Ag fires',
    ]);
    expect(told({ state: 'solid', total_mg_kg: { Ag: '420' }, wet_mg_L: { Ag: '2' } })).toEqual([
      'TTLC Ag close',
    ]);
  });

  it('calls a solid corrosive by its mixture with water, which federal law does not', () => {
    expect(told({ state: 'solid', pH: '12.5' })).toEqual(['Corrosive fires']);
    expect(told({ state: 'solid', pH: ['2', '4'] })).toEqual(['Corrosive fires']);
    expect(told({ state: 'solid', pH: '12.49' })).toEqual([]);
    expect(told({ state: 'solid', pH: null })).toEqual(['Corrosive open pH']);
  });

  it('leaves open what nobody determined', () => {
    expect(told({ state: 'solid', wet_mg_L: { Pb: null } })).toEqual(['STLC Pb open Pb']);
    expect(told({ state: 'solid', total_mg_kg: { Pb: '1' }, open: ['Pb'] })).toEqual([
      'STLC Pb open WET of Pb',
      'TTLC Pb open Pb',
    ]);
  });

  it('is not answered by the federal leaching test', () => {
    expect(told({ state: 'solid', tclp_mg_L: { Cd: '0.1' } })).toEqual([
      'STLC Cd open WET of Cd',
      'TTLC Cd open total of Cd',
    ]);
  });

  it('stays open where none was found by a method that could not see the threshold', () => {
    const none = (input: Input) => of(noneFoundIn({ pH: '7', ...input }));
    expect(
      none({ state: 'solid', wet_mg_L: { Pb: ['0', '10'] }, total_mg_kg: { Pb: ['0', '2000'] } }),
    ).toEqual(['STLC Pb open WET of Pb to below 5 mg/L', 'TTLC Pb open total of Pb to below 1000 mg/kg']);
    expect(none({ state: 'solid', wet_mg_L: { Pb: ['0', '1'] }, total_mg_kg: { Pb: ['0', '20'] } })).toEqual(
      [],
    );
  });
});

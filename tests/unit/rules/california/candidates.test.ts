import { describe, expect, it } from 'vitest';
import { californiaCandidates } from '../../../../src/rules/california/candidates';
import { levelsOf } from '../../../cases/levels-input';

type Input = Parameters<typeof levelsOf>[0];
const told = (input: Input): readonly string[] =>
  californiaCandidates(levelsOf({ pH: '7', ...input })).map(({ code, standing, lacks }) =>
    [code, standing, ...lacks].join(' '),
  );

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
});

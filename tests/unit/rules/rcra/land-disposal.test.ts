import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../../src/quantities/figure';
import type { Element } from '../../../../src/rules/element-levels';
import { landDisposal } from '../../../../src/rules/rcra/land-disposal';
import type { Amounts } from '../../../cases/amount';
import { levelsIn } from '../../../cases/levels-input';

function told(
  originCodes: readonly string[],
  amounts: Amounts,
  form: 'waste water' | 'other' = 'other',
  open: readonly Element[] = [],
): readonly string[] {
  return landDisposal({ originCodes, form, measured: levelsIn(form, amounts, 'mg/L'), open }).map(
    ({ code, standing, lacks }) => [code, standing, ...lacks].join(' '),
  );
}

describe('land disposal', () => {
  it('holds a sludge of D011 against 0.14 mg/L, not against the 5 that made it hazardous', () => {
    expect(told(['D011'], { Ag: '0.15' })).toEqual(['D011 fires']);
    expect(told(['D011'], { Ag: '4.9' })).toEqual(['D011 fires']);
  });

  it('is met at the standard: only what is above fails', () => {
    expect(told(['D011', 'D008'], { Ag: '0.14', Pb: '0.75' })).toEqual(['D008 close', 'D011 close']);
    expect(told(['D011'], { Ag: ['0.05', '0.141'] })).toEqual(['D011 fires']);
  });

  it('has other numbers for waste water', () => {
    expect(told(['D011'], { Ag: '0.43', Ni: '3.99' }, 'waste water')).toEqual(['D011 close', 'UTS Ni fires']);
    expect(told(['D011'], { Ag: '0.43', Ni: '3.99' })).toEqual(['D011 fires']);
  });

  it('asks for the underlying metals with any characteristic, for zinc, vanadium and copper with none', () => {
    expect(told(['D002'], { Ni: '12', Pb: '0.8', Zn: '90', V: '90', Se: '90', Cu: '900' })).toEqual([
      'D002 judgement',
      'UTS Ni fires',
      'UTS Pb fires',
    ]);
    expect(told(['D010'], { Se: '5.8' })).toEqual(['D010 fires']);
    expect(told([], { Ni: '900', Ag: '900' })).toEqual([]);
  });

  it('leaves open the standard of a code that nothing was measured for, and a metal that may be in it', () => {
    expect(told(['D011'], {})).toEqual(['D011 open TCLP of Ag']);
    expect(told(['D011'], { Ag: '0.01' }, 'other', ['Ni'])).toEqual(['UTS Ni open TCLP of Ni']);
    expect(told(['D011'], { Ag: '0.01' }, 'other', ['Ag'])).toEqual(['D011 open Ag']);
    expect(told(['D011'], {}, 'waste water')).toEqual(['D011 open Ag']);
  });

  it('does not pass over a code that it has no standard of', () => {
    expect(told(['D018'], {})).toEqual(['D018 open standard of D018']);
    expect(told(['F006'], { Ni: '12', Cd: '0', Cr: '0', Pb: '0', Ag: '0' })).toEqual([
      'F006 open cyanide',
      'F006 Ni fires',
    ]);
  });

  it('is not failed by what nobody found, nor met where nobody could have seen the standard', () => {
    const measured = levelsIn('TCLP', { Ag: ['0', '0.2'], Pb: ['0', '0.75'] }, 'mg/L');
    const waste = { originCodes: ['D008', 'D011'], form: 'other', measured, open: [] } as const;
    const of = (noneFound: ReadonlySet<Figure>) =>
      landDisposal({ ...waste, noneFound }).map(({ code, standing, lacks }) =>
        [code, standing, ...lacks].join(' '),
      );
    expect(of(new Set(measured.values()))).toEqual(['D008 close', 'D011 open TCLP of Ag to below 0.14 mg/L']);
    expect(of(new Set())).toEqual(['D008 close', 'D011 fires']);
  });
});

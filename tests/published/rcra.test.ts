/**
 * Levels of metals in the United States: tables that were printed elsewhere, and wastes that somebody else has classified.
 * - 40 CFR 261.24 table 1 as California adopted it (22 CCR 66261.24, table I), read in a public copy.
 * - STLC and TTLC of 22 CCR 66261.24: a laboratory's table of federal and state criteria.
 * - From which total on either test is needed: a user guide on recycled rubber (2021), table 3.
 * - Two samples of soil with lead, San Joaquin county file: hazardous in California, not by federal law.
 * - Footnotes 5 and 7 of 40 CFR 268.48 as Hawaii adopted them.
 */
import { describe, expect, it } from 'vitest';
import { california } from '../../src/reference/california-tables';
import { rcra, type ToxicityCode, toxicityCodes } from '../../src/reference/rcra-tables';
import { californiaCandidates } from '../../src/rules/california/candidates';
import { rcraCandidates } from '../../src/rules/rcra/candidates';
import { totalScreen } from '../../src/rules/rcra/toxicity';
import { levelsOf } from '../cases/levels-input';

const fires = (candidates: ReturnType<typeof rcraCandidates>) =>
  candidates.filter(({ standing }) => standing === 'fires').map(({ code }) => code);

describe('tables printed elsewhere', () => {
  it('the toxicity characteristic', () => {
    const printed =
      'D004 As 5.0, D005 Ba 100.0, D006 Cd 1.0, D007 Cr 5.0, D008 Pb 5.0, D009 Hg 0.2, D010 Se 1.0, D011 Ag 5.0';
    const ours = toxicityCodes.map(
      (code) => `${code} ${rcra.toxicity[code].element} ${rcra.toxicity[code].limit.value}`,
    );
    expect(ours.join(', ')).toBe(printed);
  });

  const printed = `Sb 15 500, As 5.0 500, Ba 100 10000, Be 0.75 75, Cd 1.0 100, Cr 5 2500, Co 80 8000, Cu 25 2500, Pb 5.0 1000,
    Hg 0.2 20, Mo 350 3500, Ni 20 2000, Se 1.0 100, Ag 5 500, Tl 7.0 700, V 24 2400, Zn 250 5000`;
  it.each(printed.split(/,\s*/).map((row) => row.trim().split(' ')))(
    '%s: STLC %s, TTLC %s',
    (el = '', stlc, ttlc) => {
      expect([california.soluble.values[el], california.total.values[el]]).toEqual([stlc, ttlc]);
    },
  );

  it('selenium, vanadium and zinc are no underlying constituents', () => {
    const not = Object.entries(rcra.landDisposal.values).filter(([, row]) => row.underlying === false);
    expect(not.map(([element]) => element).sort()).toEqual(['Se', 'V', 'Zn']);
  });
});

describe('from which total on a test is needed, mg/kg', () => {
  const federal: readonly (readonly [code: ToxicityCode, element: string, from: number])[] = [
    ['D004', 'As', 100],
    ['D005', 'Ba', 2000],
    ['D006', 'Cd', 20],
    ['D007', 'Cr', 100],
    ['D008', 'Pb', 100],
    ['D009', 'Hg', 4],
    ['D010', 'Se', 20],
    ['D011', 'Ag', 100],
  ];
  it.each(federal)('%s: %s from %d', (code, element, from) => {
    const screened = (total: number) =>
      totalScreen(levelsOf({ state: 'solid', total_mg_kg: { [element]: total } })).get(code);
    expect([screened(from), screened(from * 0.999)]).toEqual(['TCLP needed', 'cannot fail']);
  });

  const printed =
    'Sb 150, As 50, Ba 1000, Be 7.5, Cd 10, Cr 50, Co 800, Cu 250, Pb 50, Hg 2, Ni 200, Se 10, Ag 50, Tl 70, V 240, Zn 2500';
  const state = printed
    .split(', ')
    .map((row) => row.split(' '))
    .map(([el = '', from]) => [el, Number(from)] as const);
  it.each(state)('the test of California, %s from %d', (element, from) => {
    const asked = (total: number) =>
      californiaCandidates(levelsOf({ state: 'solid', pH: '7', total_mg_kg: { [element]: total } }))
        .filter(({ code }) => code === `STLC ${element}`)
        .map(({ standing, lacks }) => [standing, ...lacks]);
    expect([asked(from), asked(from * 0.999)]).toEqual([[['open', `WET of ${element}`]], []]);
  });
});

describe('samples that somebody else classified', () => {
  it.each([
    ['D2', '153', '0.82', '11.1'],
    // "Less than 0.1" is taken at its high end.
    ['D3', '177', '0.1', '5.2'],
  ])(
    '%s: lead %s mg/kg, TCLP %s, WET %s mg/L: toxic in California, not by federal law',
    (_, total, tclp, wet) => {
      const levels = levelsOf({
        state: 'solid',
        pH: '7',
        nitrateBearing: false,
        ...{ total_mg_kg: { Pb: total }, tclp_mg_L: { Pb: tclp }, wet_mg_L: { Pb: wet } },
      });
      expect(totalScreen(levels).get('D008')).toBe('TCLP needed');
      expect(fires(rcraCandidates(levels))).toEqual([]);
      expect(fires(californiaCandidates(levels))).toEqual(['STLC Pb']);
    },
  );
});

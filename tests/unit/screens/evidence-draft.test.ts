import { describe, expect, test } from 'vitest';
import { acidLines, metalLines } from '../../../src/screens/batches/evidence-asks';
import {
  emptyAcid,
  emptyMetal,
  fitted,
  type MetalDraft,
  readLine,
  readMetal,
  withLine,
} from '../../../src/screens/batches/evidence-draft';

const typed = (typed: string, unit: string) => ({ typed, unit });
const copper = (by: MetalDraft['by'], a: MetalDraft['a'], b = typed('', 'g')): MetalDraft => ({
  ...emptyMetal('Cu'),
  by,
  a,
  b,
});
const bounds = metalLines('assumed', 'Copper');

describe('evidence of a metal in a form', () => {
  test('assumed between two values begins with one unit for both', () => {
    const draft = fitted({ ...emptyMetal('Cu'), by: 'assumed' }, bounds);
    expect([draft.a.unit, draft.b.unit]).toEqual(['g/L', 'g/L']);
  });

  test('more than any liquid can hold is refused at its line, in the unit that was chosen', () => {
    const faultAt = (field: MetalDraft['a']) => {
      const read = readLine(copper('photometer', field), { key: 'a', label: 'Copper', units: ['g/L'] });
      return read.state === 'wrong' ? read.fault : read.state;
    };
    expect(faultAt(typed('99999', 'g/L'))).toMatch(/^At most 1500 g\/L\./);
    expect(faultAt(typed('9000', 'mol/L'))).toMatch(/^At most 24 mol\/L\./);
    expect(faultAt(typed('99999', 'mg/L'))).toBe('written');
    expect(readMetal(copper('photometer', typed('99999', 'g/L'))).state).toBe('wrong');
  });

  test('choosing the unit of one bound chooses that of the other, both ways', () => {
    const low = withLine(
      copper('assumed', typed('5', 'g/L'), typed('20', 'g/L')),
      bounds,
      'a',
      typed('5', 'mg/L'),
    );
    expect([low.a, low.b]).toEqual([typed('5', 'mg/L'), typed('20', 'mg/L')]);
    const high = withLine(low, bounds, 'b', typed('20', 'g'));
    expect([high.a, high.b]).toEqual([typed('', 'g'), typed('20', 'g')]);
  });

  test('a draft kept with two kinds of unit is wrong, in words, and nothing is worked out from it', () => {
    const read = readMetal(copper('assumed', typed('5', 'g/L'), typed('20', 'g')));
    expect(read).toEqual({ state: 'wrong', whole: expect.stringContaining('one unit for both') });
  });

  test('two bounds in one unit are read', () => {
    expect(readMetal(copper('assumed', typed('5', 'g/L'), typed('20', 'g/L')))).toMatchObject({
      state: 'known',
    });
  });

  test.each([
    ['photometer', typed('17.6', 'g/L'), 'weighing', typed('', 'g')],
    ['weighing', typed('250', 'mg'), 'copper-weighed', typed('', 'g')],
    ['weighing', typed('2', 'kg'), 'copper-weighed', typed('2', 'kg')],
    ['photometer', typed('17.6', 'g/L'), 'assay', typed('17.6', 'g/L')],
    ['photometer', typed('40', 'mg/L'), 'strip', typed('40', 'mg/L')],
  ] as const)('%s %o, then known by %s: the line is %o', (from, a, to, after) => {
    expect(fitted({ ...copper(from, a), by: to }, metalLines(to, 'Copper')).a).toEqual(after);
  });
});

test('a unit that the person chose before writing stays under another way that has it', () => {
  const [before, strip] = [metalLines('photometer', 'Copper'), metalLines('strip', 'Copper')];
  const chosen = { ...emptyMetal('Cu'), by: 'strip' as const, a: typed('', 'mg/L') };
  expect(fitted(chosen, metalLines('assay', 'Copper'), before).a).toEqual(typed('', 'mg/L'));
  expect(fitted({ ...chosen, a: typed('', 'g/L') }, before, strip).a).toEqual(typed('', 'g/L'));
  expect(fitted({ ...chosen, a: typed('', 'g/L') }, strip, before).a).toEqual(typed('', 'mg/L'));
});

test('litres of charged acid do not become a strength in moles a litre', () => {
  const draft = { ...emptyAcid(), by: 'titration' as const, a: typed('3.7', 'L') };
  expect(fitted(draft, acidLines('titration')).a).toEqual(typed('', 'mol/L'));
});

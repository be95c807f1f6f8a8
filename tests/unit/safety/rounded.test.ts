import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact, given, within } from '../../../src/quantities/figure';
import { ventilationCheck } from '../../../src/safety/ventilation/check';
import { eachLot, portionTaken, roundedDown, wholeMinutes } from '../../../src/safety/ventilation/rounded';
import { asked, figure, hood, leach } from './ventilation-told';

describe('what a person weighs out', () => {
  it('is never more than what was worked out, and at most a hundredth less', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000_000 }), (n) => {
        const exactly = new Decimal(n).div(997);
        const { value } = roundedDown(figure(exactly.toString(), 'g'));
        expect(exactly.gte(value)).toBe(true);
        expect(exactly.times('0.99').lte(new Decimal(value).plus('0.000001'))).toBe(true);
      }),
    );
  });

  it('is rounded down, not to the nearest', () => {
    expect(roundedDown(figure('4.1699', 'g'))).toEqual({ value: '4.16', unit: 'g' });
    expect(roundedDown(figure('0.67599', 'g')).value).toBe('0.675');
    expect(roundedDown(figure('12345', 'L')).value).toBe('12300');
  });

  it('is in as many lots as it takes to weigh out no more than the largest one, rounded down', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 99_999 }),
        fc.constantFrom('0.40', '0.50', '0.60'),
        (n, speed) => {
          const grams = new Decimal(n).div(100);
          const result = ventilationCheck(asked(hood({}, speed), leach({ Cu: grams.toString() })));
          const most = portionTaken(result)?.value ?? '0';
          if (!result.split) {
            expect(grams.lte(most)).toBe(true);
            return;
          }
          const each = eachLot(result.split.each).value;
          expect(new Decimal(each).lte(most)).toBe(true);
          expect(new Decimal(most).times(result.split.count).gte(grams)).toBe(true);
          expect(new Decimal(most).times(result.split.count - 1).lt(grams) || result.split.count === 2).toBe(
            true,
          );
        },
      ),
    );
  });

  it('is the whole charge to its last digit where that goes in one lot', () => {
    const whole = ventilationCheck(asked({ is: 'outdoors' }, leach({ Cu: '9.8765' })));
    expect(whole.verdict).toBe('enough');
    expect(portionTaken(whole)).toEqual({ value: '10', unit: 'g' });
    const small = ventilationCheck(asked(hood(), leach({ Cu: '3.14159' })));
    expect(small.verdict).toBe('enough');
    expect(new Decimal(portionTaken(small)?.value ?? 0).gte('3.14159')).toBe(true);
  });
});

it('minutes to wait are whole, at the high end', () => {
  const time = given({
    origin: 't',
    sentence: 'Time',
    value: '20',
    unit: 'min',
    how: 'stated',
    spread: within('1.2'),
  });
  expect(wholeMinutes(time)).toBe(22);
  expect(wholeMinutes(given({ ...time, origin: 'e', value: '20', spread: exact }))).toBe(20);
});

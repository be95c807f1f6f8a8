import Decimal from 'decimal.js';
import { describe, expect, test } from 'vitest';
import type { Priced } from '../../../src/ledger/entries/prices';
import { liquidContainers } from '../../../src/ledger/liquid-containers';
import type { BillLine, Money } from '../../../src/ledger/money';
import { namedFigures, type TwoWays, type TwoWaysAsked, twoWays } from '../../../src/ledger/two-ways';
import type { Figure } from '../../../src/quantities/figure';
import { barrenLiquor, disposalState } from '../paperwork/disposal-state';

const lime: TwoWaysAsked = { base: 'hydrated-lime', pH: 9.5 };
type Made = Awaited<ReturnType<typeof disposalState>>;
const of = ({ state, barren }: Made, asked = lime): TwoWays => twoWays(state.value, [barren], asked);
const priced = ({ does }: Made, what: Priced, value: string, unit = 'EUR') =>
  does({ do: 'state-price', what, amount: { value, unit } });
async function allPriced(memory: Made): Promise<void> {
  await priced(memory, 'hydrated-lime', '0.85');
  await priced(memory, 'collection-per-litre', '1.90');
  await priced(memory, 'collection-per-kilogram', '2.35');
  await priced(memory, 'collection-visit', '85.00');
}
const cost = (money: Money | undefined, line: BillLine): Figure | undefined =>
  money?.lines.find((one) => one.line === line)?.cost;
const sumOf = (money: Money | undefined) => (money?.sum.ok ? money.sum.cost : undefined);
const ruled = ({ does }: Made, value: 'yes' | 'no') =>
  does({
    do: 'state-local-rule',
    stated: { rule: 'treatment-allowed', value },
    saidBy: 'County office',
    saidOn: '2026-05-02',
  });

describe('the two ways of one container', () => {
  test('stand side by side, each figure with its working', async () => {
    const two = of(await disposalState());
    expect(two.counted).toHaveLength(1);
    expect(two.asItIs?.volume.value.toFixed()).toBe('6.7');
    expect(two.asItIs?.metals).toEqual(['Cu', 'Ni']);
    expect(two.treated?.comesDown).toEqual(['Cu', 'Ni']);
    for (const [name, figure] of namedFigures(two))
      expect([name, figure.formula !== undefined || name === 'volume']).toEqual([name, true]);
  });

  test('keep the day on which the oldest waste went in, whichever is taken', async () => {
    const memory = await disposalState();
    const before = memory.state.value.containers.get(memory.barren)?.firstWasteIn;
    expect(before).toBeTruthy();
    expect(of(memory).firstWasteIn).toBe(before);
  });

  test('tell whether the local rules allow it, and compare either way', async () => {
    const memory = await disposalState();
    expect(of(memory)).toMatchObject({ allowed: 'not-stated', counted: [memory.barren] });
    await ruled(memory, 'no');
    expect(of(memory)).toMatchObject({ allowed: 'no', counted: [memory.barren] });
    await ruled(memory, 'yes');
    expect(of(memory).allowed).toBe('yes');
  });

  test('have no treated side where the base ends below the pH: the liquor is handed over all the same', async () => {
    const two = of(await disposalState(), { base: 'limestone', pH: 9.5 });
    expect(two.treated).toBeUndefined();
    expect(two.asItIs?.volume.value.toFixed()).toBe('6.7');
    expect(two.leftOut).toMatchObject([{ why: { code: 'stalls' } }]);
    const [out] = two.leftOut;
    expect(out?.why.code === 'stalls' && out.why.pH).toBeGreaterThan(5);
  });

  test('are not compared where ammonia waste is in it', async () => {
    const memory = await disposalState();
    await memory.logs(memory.barren, null, 'ammonia-test-waste', {
      volume: { value: '0.05', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    expect(of(memory)).toMatchObject({ counted: [], leftOut: [{ why: { code: 'ammonia' } }] });
    expect(of(memory).treated).toBeUndefined();
  });
});

describe('money', () => {
  test('adds up to the last decimal', async () => {
    const memory = await disposalState();
    await allPriced(memory);
    const { asItIs, treated } = of(memory);
    expect(cost(asItIs?.money, 'liquid')?.value.toFixed()).toBe('12.73');
    expect(sumOf(asItIs?.money)?.value.toFixed()).toBe('97.73');
    expect(sumOf(asItIs?.money)?.unit).toBe('EUR');
    const added = Decimal.sum(
      ...(['base', 'liquid', 'sludge', 'visit'] as const).map(
        (line) => cost(treated?.money, line)?.value ?? Number.NaN,
      ),
    );
    expect(sumOf(treated?.money)?.value.toFixed(15)).toBe(added.toFixed(15));
    expect(cost(treated?.money, 'sludge')?.value.toFixed(9)).toBe(
      treated?.sludge?.value.times('2.35').toFixed(9),
    );
    expect(cost(treated?.money, 'base')?.value.toFixed(9)).toBe(
      treated?.base.value.times('0.00085').toFixed(9),
    );
  });

  test('takes the liquid by the kilogram where a litre has no price', async () => {
    const memory = await disposalState();
    await priced(memory, 'collection-per-kilogram', '2.00');
    const { asItIs } = of(memory);
    expect(cost(asItIs?.money, 'liquid')?.value.toFixed(9)).toBe(asItIs?.mass.value.times(2).toFixed(9));
  });

  test('that has no price is not nothing: there is no sum, and it is said which price is missing', async () => {
    const memory = await disposalState();
    expect(of(memory).asItIs?.money).toMatchObject({
      lines: [
        { line: 'liquid', missing: ['collection-per-litre', 'collection-per-kilogram'] },
        { line: 'visit' },
      ],
      sum: { ok: false, why: { code: 'no-price' } },
    });
    await allPriced(memory);
    expect(sumOf(of(memory, { base: 'caustic-soda', pH: 9.5 }).treated?.money)).toBeUndefined();
    expect(of(memory, { base: 'caustic-soda', pH: 9.5 }).treated?.money.sum).toEqual({
      ok: false,
      why: { code: 'no-price', of: ['caustic-soda'] },
    });
  });

  test('of a visit that costs nothing is nothing, since somebody said so', async () => {
    const memory = await disposalState();
    await priced(memory, 'collection-per-litre', '1.90');
    await priced(memory, 'collection-visit', '0');
    expect(sumOf(of(memory).asItIs?.money)?.value.toFixed()).toBe('12.73');
  });

  test('in two currencies is not added', async () => {
    const memory = await disposalState();
    await allPriced(memory);
    await priced(memory, 'collection-visit', '90', 'USD');
    expect(of(memory).asItIs?.money.sum).toEqual({
      ok: false,
      why: { code: 'currencies', of: ['EUR', 'USD'] },
    });
    expect(cost(of(memory).asItIs?.money, 'visit')?.unit).toBe('USD');
  });
});

describe('the two ways of all containers', () => {
  test('are the sums of those that can be compared; the others are told of, on neither side', async () => {
    const memory = await disposalState();
    const second = await memory.opens('C-11', '10');
    await memory.logs(second, null, 'barren-liquor', {
      ...barrenLiquor,
      volume: { value: '3.00', unit: 'L' },
    });
    const all = twoWays(memory.state.value, liquidContainers(memory.state.value), lime);
    expect(all.counted).toEqual([memory.barren, second]);
    expect(all.leftOut).toEqual([{ containerId: memory.wash, why: { code: 'acid-open' } }]);
    expect(all.asItIs?.volume.value.toFixed()).toBe('9.7');
    const [a, b] = [memory.barren, second].map((id) => twoWays(memory.state.value, [id], lime).treated);
    for (const of of ['base', 'water', 'inAll', 'atThePot'] as const)
      expect(all.treated?.[of].value.toNumber()).toBeCloseTo(
        (a?.[of].value.toNumber() ?? 0) + (b?.[of].value.toNumber() ?? 0),
        9,
      );
    expect(all.treated?.standing.value.toNumber()).toBe(a?.standing.value.toNumber());
  });

  test('are fetched by one visit', async () => {
    const memory = await disposalState();
    const second = await memory.opens('C-11', '10');
    await memory.logs(second, null, 'barren-liquor', {
      ...barrenLiquor,
      volume: { value: '3.00', unit: 'L' },
    });
    await allPriced(memory);
    const all = twoWays(memory.state.value, [memory.barren, second], lime);
    expect(cost(all.asItIs?.money, 'visit')?.value.toFixed()).toBe('85');
    expect(sumOf(all.asItIs?.money)?.value.toFixed()).toBe('103.43');
  });
});

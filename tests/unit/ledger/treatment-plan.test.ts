import Decimal from 'decimal.js';
import { describe, expect, test } from 'vitest';
import { usualReference } from '../../../src/chemistry/treatment/limits';
import {
  baseForPh,
  comesOf,
  curveFor,
  proposedFor,
  treatable,
  whichPhFor,
} from '../../../src/ledger/before-treatment';
import { limitsOf } from '../../../src/ledger/discharge-limits';
import { freeSpace } from '../../../src/ledger/free-space';
import { type PlanChoice, type PlanTold, planFor } from '../../../src/ledger/treatment-plan';
import { twoWays } from '../../../src/ledger/two-ways';
import type { BaseId } from '../../../src/reference/tables';
import { barrenLiquor, disposalState } from '../paperwork/disposal-state';
import { residueState } from '../screens/residue-state';

type Made = Awaited<ReturnType<typeof disposalState>>;

const lime: PlanChoice = { stages: [{ base: 'hydrated-lime', pH: 9.5 }] };
const limestoneFirst: PlanChoice = {
  stages: [
    { base: 'limestone', pH: 5 },
    { base: 'hydrated-lime', pH: 9.5 },
  ],
};

function told({ state, barren }: Made, choice: PlanChoice): PlanTold {
  const planned = planFor(state.value, barren, choice);
  if (!planned?.ok) throw new Error(JSON.stringify(planned));
  return planned.value;
}
const sum = (grams: readonly Decimal[]): number => Decimal.sum(0, ...grams).toNumber();
const near = (value: number | undefined, wanted: number, part: number) => {
  expect(value).toBeGreaterThan(wanted * (1 - part));
  expect(value).toBeLessThan(wanted * (1 + part));
};

describe('the plan of a container', () => {
  test('cuts what is needed into portions that add up to its high end', async () => {
    const [stage] = told(await disposalState(), lime).stages;
    const grams = stage?.portions.map((portion) => portion.grams) ?? [];
    expect(sum(grams)).toBeGreaterThanOrEqual(stage?.needed.high.toNumber() ?? Number.NaN);
    const last = grams.at(-1)?.toNumber() ?? Number.NaN;
    expect(sum(grams) - last).toBeLessThan(stage?.needed.high.toNumber() ?? Number.NaN);
    expect(stage?.portions.at(-1)?.soFar.toNumber()).toBe(sum(grams));
  });

  test('takes the water of a lime slurry from its share of lime', async () => {
    const plan = told(await disposalState(), lime);
    const [stage] = plan.stages;
    // 15 g of lime in 100 g of slurry: 85 g of water to 15 g, 0.998 kg/L.
    const litres = ((stage?.needed.value.toNumber() ?? Number.NaN) * 85) / 15 / 998.2;
    near(stage?.water?.value.toNumber(), litres, 0.001);
    near(plan.water?.value.toNumber(), litres, 0.001);
    // 10 to 20 %: 9 to 4 g of water a gram of lime.
    expect(stage?.water?.low.toNumber()).toBeLessThan(litres * 0.8);
    expect(stage?.water?.high.toNumber()).toBeGreaterThan(litres * 1.4);
  });

  test.each<BaseId>(['hydrated-lime', 'caustic-soda'])(
    'counts the water that %s is stirred into in what comes of it, as both ways do',
    async (base) => {
      const memory = await disposalState();
      const { state, barren } = memory;
      const comes = comesOf(state.value, barren, base, 9.5);
      const { treated } = twoWays(state.value, [barren], { base, pH: 9.5 });
      expect(comes?.filtrate.value.toFixed(9)).toBe(treated?.filtrate.volume.value.toFixed(9));
      const { water, solids } = told(memory, { stages: [{ base, pH: 9.5 }] });
      near(water.value.toNumber() * 0.9982, treated?.water.value.toNumber() ?? Number.NaN, 0.001);
      const dry = (comes?.sludge?.dry.value.toNumber() ?? Number.NaN) / 1000;
      // All that went in; a hydroxide gives off no gas.
      near(solids?.value.toNumber(), (100 * dry) / (treated?.slurry.value.toNumber() ?? Number.NaN), 0.001);
    },
  );

  test('waits once for each portion: the full ones at the least, all of them at the most', async () => {
    const plan = told(await disposalState(), lime);
    const [stage] = plan.stages;
    const full = stage?.portions.filter(({ kind }) => kind === 'full').length ?? 0;
    const all = stage?.portions.length ?? 0;
    expect(stage?.count.low.toNumber()).toBe(full);
    expect(stage?.count.high.toNumber()).toBe(all);
    // 20 min each.
    near(plan.time.value.toNumber(), ((stage?.count.value.toNumber() ?? 0) * 20) / 60, 0.001);
    expect(plan.time.unit).toBe('h');
  });

  test('holds portions down by foam where a carbonate goes in, by heat where none does', async () => {
    const memory = await disposalState();
    const [limestone, after] = told(memory, limestoneFirst).stages;
    expect([limestone?.heldBy, after?.heldBy]).toEqual(['foam', 'heat']);
    const roomy = told(memory, { ...limestoneFirst, headspace: { value: '500', unit: 'L' } });
    expect(roomy.stages[0]?.heldBy).toBe('heat');
    expect(roomy.stages[0]?.portions.length).toBeLessThan(limestone?.portions.length ?? 0);
  });

  test('allows the rise that the person states, else the usual ten', async () => {
    const memory = await disposalState();
    const [usual] = told(memory, lime).stages;
    const [half] = told(memory, { ...lime, rise: { value: '5', unit: 'K' } }).stages;
    near(half?.byHeat.value.toNumber(), (usual?.byHeat.value.toNumber() ?? 0) / 2, 1e-9);
  });

  test('says that the slurry may not find room, and not where there is plenty', async () => {
    const memory = await disposalState();
    // 3.2 L of water at the most, and 3.1 L of room at the least.
    expect(told(memory, lime).overfull).toBe(true);
    const large = await memory.opens('C-20', '20');
    await memory.logs(large, null, 'barren-liquor', barrenLiquor);
    expect(told({ ...memory, barren: large }, lime).overfull).toBe(false);
  });

  test('is made once for a state and its choices', async () => {
    const memory = await disposalState();
    expect(planFor(memory.state.value, memory.barren, lime)).toBe(
      planFor(memory.state.value, memory.barren, { ...lime }),
    );
    expect(planFor(memory.state.value, memory.barren, { ...lime, rise: { value: '5', unit: 'K' } })).not.toBe(
      planFor(memory.state.value, memory.barren, lime),
    );
  });

  test('rests on the purity that the workshop states, as soon as it is stated', async () => {
    const memory = await disposalState();
    const before = told(memory, lime).stages[0]?.needed.value.toNumber() ?? Number.NaN;
    await memory.does({ do: 'describe-base', base: 'hydrated-lime', purity: { value: '76', unit: '%' } });
    near(told(memory, lime).stages[0]?.needed.value.toNumber(), (before * 95) / 76, 1e-9);
  });

  test('names the liquors that do not tell, since it is a plan of the least then', async () => {
    const memory = await disposalState();
    expect(told(memory, lime).openIn).toEqual([]);
    const open = await memory.logs(memory.barren, null, 'wash-water', {
      volume: { value: '0.50', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    expect(told(memory, lime).openIn).toEqual([open]);
  });
});

describe('what a treatment may rest on', () => {
  test('free space is what the vessel holds when full less what is in it, and open beside a residue', async () => {
    const memory = await residueState();
    expect(freeSpace(memory.state.value, memory.barren)?.value.toNumber()).toBeCloseTo(10 - 6.7, 9);
    expect(freeSpace(memory.state.value, memory.tub)).toBeUndefined();
  });

  test('nothing is planned where ammonia waste is in it, nor where the free acid is open', async () => {
    const memory = await disposalState();
    expect(planFor(memory.state.value, memory.wash, lime)).toBeUndefined();
    expect(treatable(memory.state.value, memory.barren)).toBeDefined();
    await memory.logs(memory.barren, null, 'ammonia-test-waste', {
      volume: { value: '0.05', unit: 'L' },
      findings: [],
      freeAcid: [],
    });
    expect(treatable(memory.state.value, memory.barren)).toBeUndefined();
    expect(baseForPh(memory.state.value, memory.barren, 'hydrated-lime', 9)).toBeUndefined();
    expect(planFor(memory.state.value, memory.barren, lime)).toBeUndefined();
    expect(curveFor(memory.state.value, memory.barren, 'hydrated-lime', 0)).toBeUndefined();
    expect(whichPhFor(memory.state.value, memory.barren, 'hydrated-lime', usualReference)).toBeUndefined();
    expect(comesOf(memory.state.value, memory.barren, 'hydrated-lime', 9)).toBeUndefined();
  });

  test('the pH that is proposed lies where copper and nickel are least, against whatever limits there are', async () => {
    const memory = await disposalState();
    expect(limitsOf(memory.state.value).of).toBe('reference');
    const window = proposedFor(memory.state.value, memory.barren, usualReference);
    expect(window?.best).toBeGreaterThan(9);
    expect(window?.best).toBeLessThan(10.5);
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'discharge-limits', value: { Cu: { value: '2', unit: 'mg/L' } } },
      saidBy: 'County office',
      saidOn: '2026-05-01',
    });
    expect(limitsOf(memory.state.value).of).toBe('local');
    // Copper alone is down a good way before nickel is; the local limits go before any reference.
    expect(proposedFor(memory.state.value, memory.barren, 'lime-settle-filter-day')?.best).toBeLessThan(9);
    expect(proposedFor(memory.state.value, memory.barren, usualReference)?.best).toBeLessThan(9);
  });
});

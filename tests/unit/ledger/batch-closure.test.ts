/** The account of a batch from its entries: 500 g of feed, one leach, one cementation, one wash. Worked out by hand. */
import { describe, expect, test } from 'vitest';
import { accountFigures, batchClosure } from '../../../src/ledger/batch-closure';
import type { Charge, Recovery } from '../../../src/ledger/entries/accounts';
import type { Feed } from '../../../src/ledger/entries/batches';
import type { AcidFinding, Finding } from '../../../src/ledger/entries/findings';
import type { StreamLogged } from '../../../src/ledger/entries/streams';
import { grams, id, litres, Scribe } from './scribe';

type Kind = StreamLogged['stream'];

const assay = (metal: Finding['metal'], value: string): Finding => ({
  by: 'assay',
  metal,
  concentration: { value, unit: 'g/L' },
});
const molar = (value: string) => [{ by: 'titration', result: { value, unit: 'mol/L' } } as const];

/** A notebook open at one batch. */
function notebook(capacitors: Feed['capacitors'] = 'precious-metal-electrode') {
  const pen = new Scribe();
  const batchId = id('ba', 1);
  pen.write({
    kind: 'batch-opened',
    v: 1,
    batchId,
    code: 'B-1',
    feed: { capacitors, era: 'unknown', mass: grams('500') },
  });
  let streams = 0;
  const gave = (
    stream: Kind,
    volume: string,
    findings: Finding[] = [],
    acid?: string,
    more: AcidFinding[] = [],
  ): string => {
    streams += 1;
    const freeAcid = acid === undefined ? [] : molar(acid);
    const liquid = { volume: litres(volume), findings, freeAcid: [...freeAcid, ...more] };
    const streamId = id('50', streams);
    pen.write({ kind: 'stream-logged', v: 1, streamId, batchId, stepId: null, stream, liquid });
    return streamId;
  };
  return {
    pen,
    gave,
    charged: (charge: Charge) => pen.write({ kind: 'batch-charged', v: 1, batchId, charge }),
    gotBack: (what: Recovery['what'], mass: string) =>
      pen.write({ kind: 'batch-recovered', v: 1, batchId, recovery: { what, mass: grams(mass) } }),
    residue: (wet: string, holds: string | 'not-determined') =>
      pen.write({
        kind: 'stream-logged',
        v: 1,
        streamId: id('50', 90),
        batchId,
        stepId: null,
        stream: 'ceramic-residue',
        solid: {
          wetMass: grams(wet),
          moisture: { by: 'stated', percent: { value: '20', unit: '%' } },
          holds: { liquor: holds },
        },
      }),
    closure: () => {
      const batch = pen.state.batches.get(batchId);
      if (!batch) throw new Error('no batch');
      return batchClosure(pen.state, batch);
    },
  };
}

const acid = (volume: string): Charge => ({
  what: 'acid',
  volume: litres(volume),
  strength: { value: '10.00', unit: 'mol/L' },
});
const water = (what: 'dilution-water' | 'wash-water', volume: string): Charge => ({
  what,
  volume: litres(volume),
});
const sheet = (mass: string): Charge => ({ what: 'copper', mass: grams(mass) });

/** Everything written down: 30 g of copper gone, 2 g from the feed, 32 g in what came out. */
function whole() {
  const book = notebook();
  book.charged(acid('0.40'));
  book.charged(water('dilution-water', '1.60'));
  book.charged(water('wash-water', '3.00'));
  book.charged(sheet('120.0'));
  book.gotBack('copper', '90.0');
  book.gotBack('silver', '60.0');
  const leach = book.gave(
    'leach-liquor',
    '2.00',
    [assay('Cu', '1.00'), assay('Ag', '30.0'), assay('Ni', '2.00')],
    '0.90',
  );
  const barren = book.gave(
    'barren-liquor',
    '2.00',
    [assay('Cu', '15.0'), assay('Ni', '2.00'), assay('Ag', '0.01')],
    '0.80',
  );
  const wash = book.gave(
    'wash-water',
    '3.00',
    [assay('Cu', '0.67'), assay('Ni', '0.05'), assay('Ag', '0.00')],
    '0.02',
  );
  return { ...book, leach, barren, wash };
}

const missing = (account: { readonly missing: readonly { readonly what: string }[] }) =>
  account.missing.map(({ what }) => what);

describe('copper', () => {
  test('gone from the sheet and brought by the feed is found again in what came out', () => {
    const { copper } = whole().closure();
    expect(copper.in.sum?.value.toNumber()).toBeCloseTo(30 + 2, 9);
    expect(copper.out.sum?.value.toNumber()).toBeCloseTo(30 + 2.01, 9);
    expect(copper.verdict).toBe('closes');
  });

  test('that is not found again is asked about, and so is too much', () => {
    const lost = whole();
    lost.charged(sheet('12.0'));
    expect(lost.closure().copper.verdict).toBe('more-in');
    const found = whole();
    found.gotBack('copper', '12.0');
    expect(found.closure().copper.verdict).toBe('more-out');
  });

  test('is not closed with itself: a liquor known by the sheet alone leaves it open', () => {
    const book = whole();
    book.gave('barren-liquor', '0.50', [
      { by: 'copper-weighed', metal: 'Cu', before: grams('120.0'), after: grams('90.0') },
    ]);
    const { copper } = book.closure();
    expect(copper.verdict).toBe('cannot-be-told');
    expect(missing(copper)).toEqual(['copper']);
    expect(copper.unaccounted).toBeUndefined();
  });

  test('is not taken for nothing where nobody weighed the sheet, or what was left of it', () => {
    const book = notebook();
    book.gave('leach-liquor', '2.00', [assay('Cu', '1.00')]);
    book.gave('barren-liquor', '2.00', [assay('Cu', '15.0')]);
    expect(missing(book.closure().copper)).toEqual(['copper-in']);
    book.charged(sheet('120.0'));
    expect(missing(book.closure().copper)).toEqual(['copper-out']);
    book.gotBack('copper', '90.0');
    expect(book.closure().copper.verdict).toBe('closes');
  });

  test('of a leach that nobody measured is what such a feed usually brings', () => {
    const book = notebook();
    book.gave('leach-liquor', '2.00');
    book.charged(sheet('120.0'));
    book.gotBack('copper', '90.0');
    book.gave('barren-liquor', '2.00', [assay('Cu', '15.0')]);
    const { copper } = book.closure();
    // 30 g and half a per cent of 500 g.
    expect(copper.in.sum?.value.toNumber()).toBeCloseTo(32.5, 9);
    expect(copper.verdict).toBe('closes');
  });
});

describe('volume', () => {
  test('of acid and water is found again; the leach liquor that became barren liquor is not counted twice', () => {
    const { volume } = whole().closure();
    expect(volume.in.sum?.value.toNumber()).toBeCloseTo(5, 9);
    expect(volume.out.sum?.value.toNumber()).toBeCloseTo(5, 9);
    expect(volume.verdict).toBe('closes');
  });

  test('held in the residue counts', () => {
    const book = whole();
    book.residue('200', book.barren);
    const { volume } = book.closure();
    // 200 g × 20 % in a liquor of about 1.07 kg/L.
    const held = volume.out.parts.find(({ figure }) => figure.sentence === 'Liquor held in the residue');
    expect(held?.figure.value.toNumber()).toBeGreaterThan(0.03);
    expect(held?.figure.value.toNumber()).toBeLessThan(0.04);
  });

  test('of a residue whose liquor nobody told is missing', () => {
    const book = whole();
    book.residue('200', 'not-determined');
    expect(missing(book.closure().volume)).toEqual(['held']);
  });

  test('of wash water that nobody wrote down is missing, and so is the acid', () => {
    const book = notebook();
    book.gave('leach-liquor', '2.00');
    expect(missing(book.closure().volume)).toEqual(['acid-charged']);
    book.charged(acid('0.40'));
    book.gave('wash-water', '3.00');
    expect(missing(book.closure().volume)).toEqual(['water-charged']);
  });
});

describe('silver', () => {
  test('of the leach liquor is found again, weighed and left in the liquors', () => {
    const { silver } = whole().closure();
    expect(silver.in.sum?.value.toNumber()).toBeCloseTo(60, 9);
    expect(silver.out.sum?.value.toNumber()).toBeCloseTo(60.02, 9);
    expect(silver.verdict).toBe('closes');
  });

  test('that nobody weighed, or measured in a liquor, leaves it open', () => {
    const book = notebook();
    book.gave('leach-liquor', '2.00', [assay('Ag', '30.0')]);
    const barren = book.gave('barren-liquor', '2.00');
    const { silver } = book.closure();
    expect(silver.missing).toEqual([{ what: 'silver-recovered' }, { what: 'silver', streamId: barren }]);
    expect(silver.open).toEqual({ in: false, out: true });
  });

  test('of base-metal electrodes is none that the feed tells of', () => {
    const book = notebook('base-metal-electrode');
    book.gave('leach-liquor', '2.00', [assay('Ag', '0.10')]);
    expect(missing(book.closure().silver)).toEqual(['silver-of-feed']);
  });
});

describe('acid', () => {
  test('charged is what the metals took and what is free', () => {
    const { acid } = whole().closure();
    // 4 mol; free 1.6 + 0.06; copper 32.01 g and nickel 4.15 g take 8/3 mol each mol.
    expect(acid.in.sum?.value.toNumber()).toBeCloseTo(4, 9);
    const taken = ((32.01 / 63.546 + 4.15 / 58.6934) * 8) / 3;
    const silver = (0.02 / 107.8682) * (4 / 3);
    expect(acid.out.sum?.value.toNumber()).toBeCloseTo(1.6 + 0.06 + taken + silver, 3);
  });

  test('before the cementation the silver counts', () => {
    const book = notebook();
    book.charged(acid('0.40'));
    const leach = book.gave('leach-liquor', '2.00', [assay('Cu', '1.00'), assay('Ni', '2.00')], '0.90');
    expect(book.closure().acid.missing).toEqual([{ what: 'silver', streamId: leach }]);
  });

  test('after the cementation nobody need measure the silver that is left', () => {
    const book = notebook();
    book.charged(acid('0.40'));
    book.gave('leach-liquor', '2.00');
    book.gave('barren-liquor', '2.00', [assay('Cu', '15.0'), assay('Ni', '2.00')], '1.00');
    expect(book.closure().acid.verdict).toBe('closes');
  });

  test('worked out from what was charged would close it with itself', () => {
    const book = whole();
    const found = [assay('Cu', '15.0'), assay('Ni', '2.00')];
    const less = {
      by: 'charged-minus-consumed',
      volume: litres('0.40'),
      strength: { value: '10.00', unit: 'mol/L' },
    };
    const barren = book.gave('barren-liquor', '0.50', found, undefined, [less as AcidFinding]);
    expect(book.closure().acid.missing).toEqual([{ what: 'acid', streamId: barren }]);
  });

  test('of a strength that the table does not know is missing, not nothing', () => {
    const book = whole();
    book.charged({ what: 'acid', volume: litres('0.10'), strength: { value: '99', unit: '%' } });
    expect(missing(book.closure().acid)).toEqual(['acid-strength']);
  });
});

describe('the account', () => {
  test('takes a test waste for drops of the liquor, between nothing and its own volume of it', () => {
    const book = whole();
    book.gave('ammonia-test-waste', '0.10');
    const { copper } = book.closure();
    expect(copper.verdict).toBe('closes');
    const drops = copper.out.parts.find(({ figure }) => figure.sentence === 'In the test waste')?.figure;
    expect(drops?.low.toNumber()).toBeCloseTo(0, 9);
    // 0.10 L of the barren liquor, 15.0 g/L ± 5 %.
    expect(drops?.high.toNumber()).toBeGreaterThan(1.575);
    expect(drops?.high.toNumber()).toBeLessThan(1.6);
  });

  test('leaves out what treating a container gave: it was counted before', () => {
    const book = whole();
    book.gave('filtrate', '4.00');
    expect(book.closure().volume.verdict).toBe('closes');
  });

  test('follows a correction and a withdrawal', () => {
    const book = whole();
    const wrong = book.charged(sheet('50.0'));
    expect(book.closure().copper.verdict).toBe('more-in');
    book.pen.write({ kind: 'entry-withdrawn', v: 1, withdraws: wrong.id, reason: 'not put in' });
    expect(book.closure().copper.verdict).toBe('closes');
  });

  test('has every line and sum under a name, each with its working', () => {
    const figures = accountFigures(whole().closure().copper);
    expect([...figures.keys()]).toEqual(['in', 'out', 'unaccounted', 'in-1', 'in-2', 'out-1', 'out-2']);
    expect(figures.get('unaccounted')?.formula).toBeDefined();
  });

  test('of an empty batch has nothing, and says so', () => {
    const { volume, copper, acid } = notebook().closure();
    expect(missing(volume)).toEqual(['acid-charged', 'streams']);
    expect(missing(copper)).toEqual(['streams']);
    expect(missing(acid)).toEqual(['acid-charged', 'streams']);
  });
});

/** Evidence that contradicts itself is flagged on the waste it is of, and wherever that waste is now. */
import { describe, expect, test } from 'vitest';
import { disputesIn } from '../../../src/ledger/disagreements';
import type { AcidFinding, Finding } from '../../../src/ledger/entries/findings';
import { flags } from '../../../src/ledger/flags';
import { can, id, pour, Scribe, tip, wash } from './scribe';

const copper = (by: 'assay' | 'photometer', value: string): Finding => ({
  by,
  metal: 'Cu',
  concentration: { value, unit: 'g/L' },
});
const logged = (findings: Finding[], freeAcid: AcidFinding[] = []) => {
  const body = wash(1, '2.00', 'leach-liquor');
  return { ...body, liquid: { ...body.liquid, findings, freeAcid } };
};
const codes = (pen: Scribe) =>
  flags(pen.state)
    .filter(({ about }) => about.streamId !== undefined)
    .map(({ code }) => code);

describe('evidence of one waste', () => {
  test('that disagrees is flagged with what it is of, and is no longer once corrected', () => {
    const pen = new Scribe();
    pen.write(can(1));
    const wrong = pen.write(logged([copper('assay', '10.0'), copper('photometer', '15.0')]));
    pen.write(pour(1, 1, '2.00'));
    const [flag] = flags(pen.state).filter(({ code }) => code === 'evidence-disagrees');
    expect(flag).toMatchObject({ pressing: 'soon', of: ['Cu'], about: { streamId: id('50', 1) } });
    pen.write({
      kind: 'entry-corrected',
      v: 1,
      corrects: wrong.id,
      body: logged([copper('assay', '10.0'), copper('photometer', '10.5')]),
      reason: 'dilution forgotten',
    });
    expect(codes(pen)).toEqual([]);
  });

  test('is shown on every container that holds some of it', () => {
    const pen = new Scribe();
    pen.write(can(1));
    pen.write(can(2));
    pen.write(can(3));
    pen.write(logged([copper('assay', '10.0'), copper('photometer', '15.0')]));
    pen.write(pour(1, 1, '2.00'));
    pen.write(tip(1, 2, '0.50'));
    const shown = [1, 2, 3].map((n) => [...disputesIn(pen.state, id('c0', n))]);
    expect(shown).toEqual([[['Cu', [id('50', 1)]]], [['Cu', [id('50', 1)]]], []]);
  });

  test('with more acid taken than charged is flagged', () => {
    const pen = new Scribe();
    pen.write(can(1));
    pen.write(
      logged(
        [{ by: 'weighing', metal: 'Cu', mass: { value: '100.0', unit: 'g' } }],
        [
          {
            by: 'charged-minus-consumed',
            volume: { value: '1.00', unit: 'L' },
            strength: { value: '2.00', unit: 'mol/L' },
          },
        ],
      ),
    );
    pen.write(pour(1, 1, '2.00'));
    expect(codes(pen)).toEqual(['more-acid-taken-than-charged']);
  });

  test('that agrees, or of which there is one, raises nothing', () => {
    const pen = new Scribe();
    pen.write(can(1));
    pen.write(logged([copper('assay', '10.0'), copper('photometer', '10.8')]));
    pen.write(pour(1, 1, '2.00'));
    expect(codes(pen)).toEqual([]);
  });
});

describe('what a batch was charged with', () => {
  const charge = { what: 'copper', mass: { value: '120.0', unit: 'g' } } as const;

  test('is of a batch that is there, or is refused', () => {
    const pen = new Scribe();
    const refused = pen.tries({ do: 'log-charge', batchId: id('ba', 7), charge });
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'unknown', field: 'batchId' } });
  });

  test('stands with the batch in the order in which it happened', () => {
    const pen = new Scribe();
    const feed = {
      capacitors: 'mixed',
      era: 'unknown',
      mass: { value: '500', unit: 'g' },
    } as const;
    pen.does({ do: 'open-batch', feed });
    const [batchId = ''] = pen.state.batches.keys();
    const wash = { what: 'wash-water', volume: { value: '3.0', unit: 'L' } } as const;
    pen.does({ do: 'log-charge', batchId, charge: wash }, 5, 5);
    pen.does({ do: 'log-charge', batchId, charge }, 6, 4);
    const silver = { what: 'silver', mass: { value: '60.0', unit: 'g' } } as const;
    pen.does({ do: 'log-recovery', batchId, recovery: silver }, 7);
    const batch = pen.state.batches.get(batchId);
    expect(batch?.charged.map(({ body }) => body.charge.what)).toEqual(['copper', 'wash-water']);
    expect(batch?.recovered.map(({ body }) => body.recovery)).toEqual([silver]);
  });
});

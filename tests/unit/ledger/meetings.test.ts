import { describe, expect, it } from 'vitest';
import { asHeld } from '../../../src/ledger/amounts';
import { fillingFault } from '../../../src/ledger/decisions/containers';
import type { PlainBody } from '../../../src/ledger/entries/body';
import { type Flag, flags } from '../../../src/ledger/flags';
import { cardOf } from '../../../src/ledger/flags-of-meetings';
import { contentsSide } from '../../../src/ledger/meeting-sides';
import { placesThatFit } from '../../../src/ledger/places-that-fit';
import { emergencyCards } from '../../../src/safety/emergency-cards';
import type { StreamKind } from '../../../src/safety/stream-kind';
import { begun, can, dose, id, litres, pour, Scribe, tip } from './scribe';

const liquid = (n: number, stream: StreamKind, volume = '1', molar?: string) =>
  ({
    kind: 'stream-logged',
    v: 1,
    streamId: id('50', n),
    batchId: null,
    stepId: null,
    stream,
    liquid: {
      volume: litres(volume),
      findings: [],
      freeAcid: molar === undefined ? [] : [{ by: 'titration', result: { value: molar, unit: 'mol/L' } }],
    },
  }) satisfies PlainBody;

const filters = (n: number, holds: number) =>
  ({
    kind: 'stream-logged',
    v: 1,
    streamId: id('50', n),
    batchId: null,
    stepId: null,
    stream: 'spent-filters',
    solid: {
      wetMass: { value: '80', unit: 'g' },
      moisture: { by: 'not-determined' },
      holds: { liquor: id('50', holds) },
    },
  }) satisfies PlainBody;

type Made = { readonly material?: 'HDPE' | 'PP' | 'glass' | 'other'; readonly otherMaterial?: string };
const of = (n: number, made: Made) => ({ ...can(n), ...made }) satisfies PlainBody;

function written(...bodies: readonly PlainBody[]): Scribe {
  const scribe = new Scribe();
  for (const body of bodies) scribe.write(body);
  return scribe;
}

const place = (stream: number, into: number) =>
  ({
    do: 'place-stream',
    streamId: id('50', stream),
    containerId: id('c0', into),
    amount: litres('1'),
  }) as const;
const move = (from: number, into: number) => {
  const { kind: _, v: __, ...body } = tip(from, into, '0.5');
  return { do: 'move-contents', ...body } as const;
};
const flagged = (scribe: Scribe, code: Flag['code']) =>
  flags(scribe.state).filter((flag) => flag.code === code);

describe('a planned placement', () => {
  it('that would bring two together that must not meet is refused by the names of both', () => {
    const scribe = written(
      can(1),
      liquid(1, 'leach-liquor'),
      pour(1, 1, '1'),
      liquid(2, 'ammonia-test-waste'),
    );
    expect(scribe.tries(place(2, 1))).toMatchObject({
      refusal: {
        code: 'must-not-meet',
        field: 'containerId',
        details: {
          containerId: id('c0', 1),
          by: 'AG-NH3',
          there: 'leach-liquor',
          added: 'ammonia-test-waste',
        },
      },
    });
  });

  it('into a container of the wrong material is refused by the names of both', () => {
    const scribe = written(
      of(1, { material: 'other', otherMaterial: 'old steel can' }),
      liquid(1, 'wash-water'),
    );
    expect(scribe.tries(place(1, 1))).toMatchObject({
      refusal: {
        code: 'material-does-not-hold',
        details: { by: 'ACID-METAL', material: 'steel', added: 'wash-water' },
      },
    });
  });

  it.each([
    ['10.3', true],
    ['10.6', false],
  ])('of %s mol/L into HDPE, which stands up to 50 %%, is taken: %s', (molar, ok) => {
    const scribe = written(can(1), liquid(1, 'leach-liquor', '1', molar));
    const tried = scribe.tries(place(1, 1));
    expect(tried.ok).toBe(ok);
    if (!tried.ok)
      expect(tried.refusal).toMatchObject({ code: 'material-does-not-hold', details: { by: 'hdpe' } });
  });

  it('of its own kind, or of liquor nobody measured, is taken', () => {
    const scribe = written(can(1), liquid(1, 'leach-liquor'), pour(1, 1, '1'), liquid(2, 'leach-liquor'));
    expect(scribe.tries(place(2, 1)).ok).toBe(true);
  });

  it('into a container whose contents nobody knows is refused, whatever it is', () => {
    for (const kind of ['wash-water', 'ammonia-test-waste', 'filtrate'] as const) {
      const scribe = written(can(1), liquid(1, kind));
      scribe.does({ do: 'mark-container', containerId: id('c0', 1), mark: 'contents-doubtful' });
      expect(scribe.tries(place(1, 1))).toMatchObject({ refusal: { code: 'contents-doubtful' } });
    }
  });
});

describe('a planned move', () => {
  it('is refused by what is in both containers', () => {
    const scribe = written(
      can(1),
      can(2),
      liquid(1, 'barren-liquor'),
      pour(1, 1, '1'),
      liquid(2, 'chloride-test-waste'),
      pour(2, 2, '1'),
    );
    expect(scribe.tries(move(2, 1))).toMatchObject({
      refusal: {
        code: 'must-not-meet',
        details: { by: 'HNO3-HCL', there: 'barren-liquor', added: 'chloride-test-waste' },
      },
    });
  });

  it('of filters is refused for the liquor that they hold', () => {
    const scribe = written(can(1), can(2), liquid(1, 'ammonia-test-waste'), filters(2, 1));
    scribe.write({ ...pour(2, 1, '1'), amount: { value: '80', unit: 'g' } });
    scribe.write(liquid(3, 'spent-filters'));
    scribe.write(pour(3, 2, '1'));
    expect(contentsSide(scribe.state, id('c0', 1))).toMatchObject([
      { thing: 'spent-filters', also: expect.arrayContaining(['ammonia']) },
    ]);
    expect(flagged(scribe, 'met-what-it-must-not'), 'one thing does not meet itself').toEqual([]);
    const moved = { ...move(1, 2), amount: { value: '10', unit: 'g' } } as const;
    expect(scribe.tries(moved)).toMatchObject({
      refusal: { code: 'must-not-meet', details: { by: 'AG-NH3' } },
    });
  });
});

describe('a planned treatment', () => {
  const plan = (scribe: Scribe, agent: 'caustic-soda' | 'hydrated-lime') =>
    scribe.tries({
      do: 'begin-treatment',
      containerId: id('c0', 1),
      stages: [{ agent }],
      clearance: id('ea', 1),
    });

  it('with caustic soda in glass is refused by the names of both, with lime it is not for that', () => {
    const scribe = written(of(1, { material: 'glass' }), liquid(1, 'barren-liquor'), pour(1, 1, '1'));
    expect(plan(scribe, 'caustic-soda')).toMatchObject({
      refusal: { code: 'material-does-not-hold', details: { material: 'glass', added: 'caustic-soda' } },
    });
    expect(plan(scribe, 'hydrated-lime')).toMatchObject({ refusal: { code: 'treatment-not-allowed' } });
  });
});

describe('what has happened all the same', () => {
  it('is flagged as pressing, with the card to open, and goes once it is corrected', () => {
    const scribe = written(
      can(1),
      liquid(1, 'leach-liquor'),
      pour(1, 1, '1'),
      liquid(2, 'ammonia-test-waste'),
    );
    expect(flagged(scribe, 'met-what-it-must-not')).toEqual([]);
    const [entry] = scribe.does({ ...place(2, 1), do: 'log-placement-happened' });
    const [flag] = flagged(scribe, 'met-what-it-must-not');
    expect(flag).toMatchObject({
      pressing: 'now',
      about: { containerId: id('c0', 1) },
      a: 'leach-liquor',
      b: 'ammonia-test-waste',
      by: 'AG-NH3',
      card: 'ammonia-silver',
    });
    expect(flags(scribe.state)[0]).toEqual(flag);
    expect(emergencyCards.has((flag && cardOf(flag)) ?? '')).toBe(true);
    scribe.write({ kind: 'entry-withdrawn', v: 1, withdraws: entry?.id ?? '', reason: 'did not happen' });
    expect(flagged(scribe, 'met-what-it-must-not')).toEqual([]);
  });

  it('in a container that does not hold it is flagged as pressing', () => {
    const scribe = written(of(1, { material: 'other', otherMaterial: 'steel' }), liquid(1, 'leach-liquor'));
    scribe.does({ ...place(1, 1), do: 'log-placement-happened' });
    expect(flagged(scribe, 'container-does-not-hold')).toMatchObject([
      { pressing: 'now', a: 'steel', b: 'leach-liquor', by: 'ACID-METAL', card: 'bulging-container' },
    ]);
  });

  it('is flagged before a cap that is tight', () => {
    const scribe = written(
      can(1, '5', 'tight'),
      liquid(1, 'leach-liquor'),
      pour(1, 1, '1'),
      liquid(2, 'ammonia-test-waste'),
      pour(2, 1, '1'),
    );
    expect(
      flags(scribe.state)
        .filter(({ pressing }) => pressing === 'now')
        .map(({ code }) => code),
    ).toEqual(['met-what-it-must-not', 'tight-cap-on-gassing-waste']);
  });

  it('comes before a tight cap and an overfull can', () => {
    const scribe = written(
      can(1, '1', 'tight'),
      liquid(1, 'leach-liquor'),
      liquid(2, 'ammonia-test-waste'),
      pour(1, 1, '1'),
      pour(2, 1, '1'),
    );
    const now = flags(scribe.state).filter(({ pressing }) => pressing === 'now');
    expect(now.length).toBeGreaterThan(2);
    expect(now[0]?.code).toBe('met-what-it-must-not');
  });

  it('a base on ammonia waste leads to the card for silver and ammonia', () => {
    const scribe = written(can(1), liquid(1, 'ammonia-test-waste'), pour(1, 1, '1'), begun(1, 1));
    expect(flagged(scribe, 'ammonia-in-treatment').map(cardOf)).toEqual([null]);
    scribe.write(dose(1, '10'));
    expect(flagged(scribe, 'ammonia-in-treatment').map(cardOf)).toEqual(['ammonia-silver']);
  });
});

describe('a container of which it is not determined whether it holds its acid', () => {
  const known = (made: Made, molar?: string) =>
    flagged(
      written(of(1, made), liquid(1, 'leach-liquor', '1', molar), pour(1, 1, '1')),
      'material-not-determined',
    );

  it('is flagged where the strength or the material is open, to know and no more', () => {
    expect(known({ material: 'HDPE' })).toMatchObject([{ pressing: 'know', lacks: 'strength' }]);
    expect(known({ material: 'other', otherMaterial: 'what the shop had' })).toMatchObject([
      { lacks: 'material' },
    ]);
    expect(known({ material: 'other' }, '1')).toMatchObject([{ lacks: 'material' }]);
    expect(known({ material: 'HDPE' }, '1')).toEqual([]);
    expect(known({ material: 'glass' })).toEqual([]);
  });

  it('is flagged where one of two liquors does not tell its strength', () => {
    const scribe = written(can(1), liquid(1, 'leach-liquor', '1', '1'), pour(1, 1, '1'));
    for (const body of [liquid(2, 'leach-liquor'), pour(2, 1, '1')]) scribe.write(body);
    expect(flagged(scribe, 'material-not-determined')).toHaveLength(1);
  });

  it('is not flagged while it is empty', () => {
    expect(flagged(written(of(1, { material: 'other' })), 'material-not-determined')).toEqual([]);
  });
});

describe('the right place', () => {
  const scribe = written(
    can(1),
    can(2),
    can(3),
    liquid(1, 'leach-liquor'),
    pour(1, 1, '1'),
    liquid(2, 'ammonia-test-waste'),
    pour(2, 3, '0.5'),
  );
  const side = [{ thing: 'ammonia-test-waste' }];
  const codes = (volume: string, except: readonly string[] = []) =>
    placesThatFit(scribe.state, { added: asHeld(litres(volume)), side, field: 'x' }, except).map(
      ({ body }) => body.code,
    );

  it('is where its own kind stands, then what is empty, never where it is refused', () => {
    expect(codes('0.5')).toEqual(['C-03', 'C-02']);
    expect(codes('0.5', [id('c0', 3)])).toEqual(['C-02']);
  });

  it('has room for it', () => {
    expect(codes('4.2')).toEqual(['C-02']);
    expect(codes('4.6')).toEqual([]);
  });

  it('is not under a tight cap, nor in what nobody knows the material of', () => {
    const shelf = written(
      can(1, '5', 'tight'),
      of(2, { material: 'other', otherMaterial: 'old can' }),
      can(3),
      liquid(1, 'leach-liquor'),
    );
    const places = (stream: StreamKind) =>
      placesThatFit(
        shelf.state,
        { added: asHeld(litres('1')), side: [{ thing: stream }], field: 'x' },
        [],
      ).map(({ body }) => body.code);
    expect(places('leach-liquor')).toEqual(['C-03']);
    expect(places('hydroxide-sludge')).toEqual(['C-01', 'C-02', 'C-03']);
  });

  it('of ammonia waste, which is kept acid, is plastic', () => {
    const shelf = written(
      of(1, { material: 'other', otherMaterial: 'steel' }),
      of(2, { material: 'other', otherMaterial: 'old can' }),
      of(3, { material: 'glass' }),
      of(4, { material: 'other', otherMaterial: 'PVC pipe' }),
      of(5, { material: 'PP' }),
    );
    const filling = { added: asHeld(litres('0.5')), side, field: 'x' };
    expect(placesThatFit(shelf.state, filling, []).map(({ body }) => body.code)).toEqual(['C-04', 'C-05']);
  });

  it('would be taken there', () => {
    for (const { body } of placesThatFit(
      scribe.state,
      { added: asHeld(litres('0.5')), side, field: 'x' },
      [],
    ))
      expect(
        fillingFault(scribe.state, body.containerId, { added: asHeld(litres('0.5')), side, field: 'x' }),
      ).toBeNull();
  });
});

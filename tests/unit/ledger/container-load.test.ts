import { beforeEach, describe, expect, it } from 'vitest';
import { containerFigures, namedFigures } from '../../../src/ledger/container-figures';
import { wholeLoad } from '../../../src/ledger/container-load';
import { contentsOf } from '../../../src/ledger/contents-followed';
import type { IntentionOf } from '../../../src/ledger/intention';
import { baseIds } from '../../../src/reference/tables';
import { type ShellInMemory, shellInMemory } from '../../support/shell-in-memory';

let book: ShellInMemory;
let batchId: string;

const open = async (code: string): Promise<string> => {
  const { body } = await book.does({
    do: 'open-container',
    code,
    vessel: 'jerrican',
    capacity: { value: '20', unit: 'L' },
    material: 'HDPE',
    cap: 'vented',
    openedOn: '2026-05-12',
  });
  return body.kind === 'container-opened' ? body.containerId : '';
};

type Liquid = NonNullable<IntentionOf<'log-stream'>['liquid']>;
const liquid = (litres: string, copper: string, acid: string): Liquid => ({
  volume: { value: litres, unit: 'L' },
  findings: [{ by: 'photometer', metal: 'Cu', concentration: { value: copper, unit: 'g/L' } }],
  freeAcid: [{ by: 'titration', result: { value: acid, unit: 'mol/L' } }],
});

const log = async (
  stream: IntentionOf<'log-stream'>['stream'],
  part: Pick<IntentionOf<'log-stream'>, 'liquid' | 'solid'>,
  into?: string,
): Promise<string> => {
  const amount = part.liquid?.volume ?? part.solid?.wetMass;
  const { body } = await book.does({
    do: 'log-stream',
    batchId,
    stepId: null,
    stream,
    ...part,
    ...(into && amount ? { placements: [{ containerId: into, amount }] } : {}),
  });
  return body.kind === 'stream-logged' ? body.streamId : '';
};

const copperIn = (id: string) => containerFigures(book.state.value, id).metals.find((m) => m.metal === 'Cu');
const moveOut = (from: string, to: string | null, litres: string) =>
  book.does({
    do: 'log-move-happened',
    fromContainerId: from,
    toContainerId: to,
    amount: { value: litres, unit: 'L' },
    purpose: to === null ? 'sample' : 'transfer',
  });

beforeEach(async () => {
  book = shellInMemory();
  const { body } = await book.does({
    do: 'open-batch',
    feed: { capacitors: 'mixed', era: 'unknown', mass: { value: '500', unit: 'g' } },
  });
  batchId = body.kind === 'batch-opened' ? body.batchId : '';
});

describe('what a container holds', () => {
  it('is what was placed in it, with one volume reading behind all of its figures', async () => {
    const id = await open('C-01');
    await log('barren-liquor', { liquid: liquid('6.70', '17.6', '0.58') }, id);
    const copper = copperIn(id);
    expect(copper?.all?.value.toFixed(2)).toBe('117.92');
    // The concentration was read, not worked out of the mass: the volume's spread must cancel out of it.
    const back = copper?.perLitre;
    expect(back?.high.minus(back.value).div(back.value).toNumber()).toBeCloseTo(0.1, 6);
  });

  it('is less by a sample taken out, and as strong as before', async () => {
    const id = await open('C-01');
    await log('barren-liquor', { liquid: liquid('4.00', '10.0', '0.50') }, id);
    await moveOut(id, null, '1.00');
    expect(copperIn(id)?.all?.value.toNumber()).toBeCloseTo(30, 9);
    expect(copperIn(id)?.perLitre?.value.toNumber()).toBeCloseTo(10, 9);
  });

  it('goes over to another container as it stood just then, not as it stands now', async () => {
    const [a, b] = [await open('C-01'), await open('C-02')];
    await log('barren-liquor', { liquid: liquid('4.00', '10.0', '0.50') }, a);
    await moveOut(a, b, '1.00');
    await log('barren-liquor', { liquid: liquid('3.00', '50.0', '0.50') }, a);
    expect(copperIn(b)?.all?.value.toNumber()).toBeCloseTo(10, 9);
    expect(copperIn(a)?.all?.value.toNumber()).toBeCloseTo(180, 9);
  });

  it('follows a correction of the liquor', async () => {
    const id = await open('C-01');
    await log('barren-liquor', { liquid: liquid('4.00', '10.0', '0.50') }, id);
    const entry = book.state.value.log.find((e) => e.body.kind === 'stream-logged');
    if (entry?.body.kind !== 'stream-logged') throw new Error('not logged');
    const body = { ...entry.body, liquid: liquid('4.00', '12.0', '0.50') };
    await book.does({ do: 'correct-entry', corrects: entry.id, body, reason: 'misread' });
    expect(copperIn(id)?.all?.value.toNumber()).toBeCloseTo(48, 9);
  });

  it('is open where a liquor does not tell, by the name of that liquor', async () => {
    const id = await open('C-01');
    await log('barren-liquor', { liquid: liquid('4.00', '10.0', '0.50') }, id);
    const silent = await log(
      'wash-water',
      {
        liquid: { volume: { value: '2.00', unit: 'L' }, findings: [], freeAcid: [{ by: 'not-determined' }] },
      },
      id,
    );
    const figures = containerFigures(book.state.value, id);
    expect(copperIn(id)).toMatchObject({ openIn: [silent] });
    expect(figures.acid.openIn).toEqual([silent]);
    expect(figures.bases.get('hydrated-lime')?.needed.openIn).toContain(silent);
  });
});

describe('a wet residue', () => {
  it('brings the acid and copper of the liquor it holds', async () => {
    const [a, b] = [await open('C-01'), await open('C-02')];
    const mother = await log('leach-liquor', { liquid: liquid('3.40', '11.8', '1.31') }, a);
    await log(
      'ceramic-residue',
      {
        solid: {
          wetMass: { value: '500', unit: 'g' },
          moisture: { by: 'stated', percent: { value: '20', unit: '%' } },
          holds: { liquor: mother },
        },
      },
      b,
    );
    const contents = contentsOf(book.state.value, b);
    expect(contents.residues[0]?.held?.volume.value.toNumber()).toBeGreaterThan(0.085);
    expect(wholeLoad(contents)?.freeAcid.figure?.value.toNumber()).toBeCloseTo(
      1.31 * (contents.residues[0]?.held?.volume.value.toNumber() ?? 0),
      9,
    );
    expect(containerFigures(book.state.value, b).bases.size).toBe(baseIds.length);
  });

  it('of which nobody knows the liquor is told of, and not counted as nothing', async () => {
    const id = await open('C-01');
    const streamId = await log(
      'spent-filters',
      {
        solid: {
          wetMass: { value: '80', unit: 'g' },
          moisture: { by: 'not-determined' },
          holds: { liquor: 'not-determined' },
        },
      },
      id,
    );
    expect(containerFigures(book.state.value, id)).toMatchObject({ silent: [streamId], metals: [] });
  });
});

describe('what must not meet', () => {
  it('ammonia waste is refused where nitrate liquor is, and written down when it happened', async () => {
    const id = await open('C-01');
    await log('leach-liquor', { liquid: liquid('3.00', '10', '1') }, id);
    const ammonia = await log('ammonia-test-waste', {
      liquid: { volume: { value: '0.05', unit: 'L' }, findings: [], freeAcid: [] },
    });
    const placing = { streamId: ammonia, containerId: id, amount: { value: '0.05', unit: 'L' } } as const;
    const planned = await book.shell.perform({ do: 'place-stream', ...placing });
    expect(planned).toMatchObject({ ok: false, refusal: { code: 'must-not-meet' } });
    await book.does({ do: 'log-placement-happened', ...placing });
    const figures = containerFigures(book.state.value, id);
    expect(figures.noBase).toBe('ammonia');
    expect(figures.bases.size).toBe(0);
  });

  it('nitrate liquor is refused where nitrate liquor is not', async () => {
    const id = await open('C-01');
    await log('chloride-test-waste', { liquid: liquid('0.10', '1', '1') }, id);
    const liquor = await log('leach-liquor', { liquid: liquid('1.00', '10', '1') });
    const refused = await book.shell.perform({
      do: 'place-stream',
      streamId: liquor,
      containerId: id,
      amount: { value: '1.00', unit: 'L' },
    });
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'must-not-meet' } });
  });
});

describe('no base is worked out', () => {
  const wet = (liquor: string) => ({
    wetMass: { value: '80', unit: 'g' as const },
    moisture: { by: 'stated' as const, percent: { value: '50', unit: '%' as const } },
    holds: { liquor },
  });

  it('where filters still hold ammonia waste, and nitrate liquor is refused there', async () => {
    const id = await open('C-01');
    const ammonia = await log('ammonia-test-waste', { liquid: liquid('0.20', '1', '0.1') });
    await log('spent-filters', { solid: wet(ammonia) }, id);
    expect(containerFigures(book.state.value, id).noBase).toBe('ammonia');
    const liquor = await log('leach-liquor', { liquid: liquid('1.00', '10', '1') });
    const refused = await book.shell.perform({
      do: 'place-stream',
      streamId: liquor,
      containerId: id,
      amount: { value: '1.00', unit: 'L' },
    });
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'must-not-meet' } });
  });

  it('where nobody knows for sure what is in it', async () => {
    const id = await open('C-01');
    await log('barren-liquor', { liquid: liquid('4.00', '10', '0.5') }, id);
    await book.does({ do: 'mark-container', containerId: id, mark: 'contents-doubtful' });
    const figures = containerFigures(book.state.value, id);
    expect(figures).toMatchObject({ noBase: 'doubtful' });
    expect(figures.bases.size).toBe(0);
  });

  it('where liquid was moved by weight, which the ledger cannot follow', async () => {
    const [a, b] = [await open('C-01'), await open('C-02')];
    await log('barren-liquor', { liquid: liquid('4.00', '10', '0.5') }, a);
    await book.does({
      do: 'log-move-happened',
      fromContainerId: a,
      toContainerId: b,
      amount: { value: '2', unit: 'kg' },
      purpose: 'transfer',
    });
    for (const id of [a, b]) expect(containerFigures(book.state.value, id).noBase).toBe('unaccounted');
  });

  it('and all is told again once the container was emptied and filled anew', async () => {
    const id = await open('C-01');
    await book.does({
      do: 'log-placement-happened',
      streamId: await log('barren-liquor', { liquid: liquid('4.00', '10', '0.5') }),
      containerId: id,
      amount: { value: '4.00', unit: 'L' },
    });
    await moveOut(id, null, '4.00');
    await log('barren-liquor', { liquid: liquid('2.00', '20', '0.5') }, id);
    expect(copperIn(id)?.all?.value.toNumber()).toBeCloseTo(40, 9);
    expect(containerFigures(book.state.value, id).noBase).toBeNull();
  });
});

it('liquor poured off a residue goes over with all that is in it', async () => {
  const [a, b] = [await open('C-01'), await open('C-02')];
  const mother = await log('leach-liquor', { liquid: liquid('4.00', '10', '1.00') }, a);
  await log(
    'ceramic-residue',
    {
      solid: {
        wetMass: { value: '500', unit: 'g' },
        moisture: { by: 'stated', percent: { value: '20', unit: '%' } },
        holds: { liquor: mother },
      },
    },
    a,
  );
  await moveOut(a, b, '3.00');
  expect(copperIn(b)?.all?.value.toNumber()).toBeCloseTo(30, 9);
  expect(containerFigures(book.state.value, b)).toMatchObject({ noBase: null });
  expect(contentsOf(book.state.value, a).residues.length).toBe(1);
});

it('copper known only from what silver displaced is at least that, and the base says so', async () => {
  const id = await open('C-01');
  const streamId = await log(
    'barren-liquor',
    {
      liquid: {
        volume: { value: '6.70', unit: 'L' },
        findings: [
          {
            by: 'metals-recovered',
            metal: 'Cu',
            silver: { value: '10', unit: 'g' },
            palladium: { value: '2', unit: 'g' },
          },
        ],
        freeAcid: [{ by: 'titration', result: { value: '0.58', unit: 'mol/L' } }],
      },
    },
    id,
  );
  // 10 g × 0.2946 + 2 g × 0.5971 = 4.14 g.
  expect(copperIn(id)?.all?.value.toNumber()).toBeCloseTo(4.14, 2);
  expect(copperIn(id)?.openIn).toEqual([streamId]);
  expect(containerFigures(book.state.value, id).bases.get('hydrated-lime')?.needed.openIn).toContain(
    streamId,
  );
});

it('two containers poured to and fro a hundred times are followed in one pass', async () => {
  const [a, b] = [await open('C-01'), await open('C-02')];
  await log('barren-liquor', { liquid: liquid('4.00', '10', '0.5') }, a);
  await log('barren-liquor', { liquid: liquid('4.00', '20', '0.5') }, b);
  for (let i = 0; i < 50; i += 1) {
    await moveOut(a, b, '1.00');
    await moveOut(b, a, '1.00');
  }
  const sum = (copperIn(a)?.all?.value ?? copperIn(b)?.all?.value)?.plus(copperIn(b)?.all?.value ?? 0);
  expect(sum?.toNumber()).toBeCloseTo(120, 6);
});

it('every figure that has a name can show its working down to what was written or published', async () => {
  const id = await open('C-01');
  await log('barren-liquor', { liquid: liquid('6.70', '17.6', '0.58') }, id);
  const named = namedFigures(containerFigures(book.state.value, id));
  expect(named.size).toBeGreaterThan(25);
  for (const [name, figure] of named) {
    const walk = (f: typeof figure): void => {
      if (f.formula) expect(f.inputs.length, `${name}: ${f.sentence} has inputs`).toBeGreaterThan(0);
      else if (f.how === 'constant')
        expect(f.sources.length, `${name}: ${f.sentence} has a source`).toBeGreaterThan(0);
      else expect(f.how, `${name}: ${f.sentence} is not a dead end`).not.toBe('worked-out');
      f.inputs.forEach(walk);
    };
    walk(figure);
  }
});

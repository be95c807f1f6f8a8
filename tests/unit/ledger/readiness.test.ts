import Decimal from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { candidatesOf } from '../../../src/ledger/container-candidates';
import { containerFigures } from '../../../src/ledger/container-figures';
import type { Intention } from '../../../src/ledger/intention';
import { apartAmong, gapsOf, gapsOfPlace, tooFullBy, untoldIn } from '../../../src/ledger/readiness';
import type { ContainerState } from '../../../src/ledger/state';
import { stillToSay } from '../../../src/ledger/still-to-say';
import { metalSymbols } from '../../../src/reference/tables';
import { barrenLiquor, disposalState } from '../paperwork/disposal-state';

type Memory = Awaited<ReturnType<typeof disposalState>>;

function containerOf({ state }: Memory, id: string): ContainerState {
  const container = state.value.containers.get(id);
  if (!container) throw new Error('no such container');
  return container;
}

const zone = 'Europe/Paris';
const gaps = (memory: Memory, id: string, now = memory.now.value) =>
  gapsOf(memory.state.value, containerOf(memory, id), containerFigures(memory.state.value, id), {
    now,
    zone,
  });
const codes = (memory: Memory, id: string, now?: string) => gaps(memory, id, now).map(({ code }) => code);
const untold = ({ state, ...memory }: Memory, id: string) =>
  untoldIn(state.value, containerOf({ state, ...memory }, id), containerFigures(state.value, id));

const labelled = (containerId: string, of: object = { paper: 'labels' }) =>
  ({
    do: 'record-paper',
    containerIds: [containerId],
    contentHash: 'a'.repeat(64),
    fileName: 'label-C-07-A6-2026-05-17.pdf',
    format: 'pdf',
    ...of,
  }) as Intention;
const mark = (containerId: string, as: 'closed' | 'held' | 'let-go' | 'gone' | 'leaving'): Intention => ({
  do: 'mark-container',
  containerId,
  mark: as,
});

describe('what a waste does not tell', () => {
  it('is all of it where nobody measured anything', async () => {
    const memory = await disposalState();
    expect(untold(memory, memory.wash)).toEqual([
      {
        streamId: memory.washStream,
        substances: [...metalSymbols, 'acid'],
        partly: [],
        looks: ['ph', 'colour', 'layers'],
        heldLiquor: false,
      },
    ]);
  });

  it('leaves out what a laboratory found in the container', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'log-lab-report',
      containerId: memory.wash,
      laboratory: 'Weir Laboratory',
      sampledOn: memory.now.value.slice(0, 10),
      results: [{ element: 'Ba', in: 'tclp', level: { value: '2.1', unit: 'mg/L' } }],
    });
    const [one] = untold(memory, memory.wash);
    expect(one?.substances).toEqual([...metalSymbols.filter((metal) => metal !== 'Ba'), 'acid']);
  });

  it('leaves out what was measured, read or seen', async () => {
    const memory = await disposalState();
    const [one, ...more] = untold(memory, memory.barren);
    expect(more).toEqual([]);
    expect(one?.substances).toEqual(metalSymbols.filter((metal) => metal !== 'Cu' && metal !== 'Ni'));
    expect(one?.looks).toEqual(['layers']);
  });

  it('names the one of two that is silent, and that others tell of it', async () => {
    const memory = await disposalState();
    const { streamId } = await poured(memory, memory.barren, { findings: [], freeAcid: [] });
    const silent = untold(memory, memory.barren).find((one) => one.streamId === streamId);
    expect(silent?.partly).toEqual(expect.arrayContaining(['Cu', 'Ni', 'acid']));
    expect(silent?.partly).not.toContain('Ag');
  });
});

async function poured(memory: Memory, containerId: string, known: object = barrenLiquor) {
  const { body } = await memory.does({
    do: 'log-stream',
    batchId: memory.batch,
    stepId: null,
    stream: 'barren-liquor',
    liquid: { ...barrenLiquor, volume: { value: '0.5', unit: 'L' }, ...known },
    placements: [{ containerId, amount: { value: '0.5', unit: 'L' } }],
  });
  return { streamId: body.kind === 'stream-logged' ? body.streamId : '' };
}

describe('what is missing before a container leaves', () => {
  it('is its closing, until somebody says that it is closed', async () => {
    const memory = await disposalState();
    expect(codes(memory, memory.barren)).toContain('not-closed');
    await memory.does(mark(memory.barren, 'closed'));
    expect(codes(memory, memory.barren)).not.toContain('not-closed');
  });

  it('is that nobody let it go, while it is held', async () => {
    const memory = await disposalState();
    await memory.does(mark(memory.barren, 'held'));
    expect(gaps(memory, memory.barren)).toContainEqual({ code: 'held', since: memory.now.value });
    await memory.does(mark(memory.barren, 'let-go'));
    expect(codes(memory, memory.barren)).not.toContain('held');
  });

  it('is nothing else where it is empty or gone', async () => {
    const memory = await disposalState();
    const empty = await memory.opens('C-11', '5');
    expect(codes(memory, empty)).toEqual(['empty']);
    await memory.does(mark(memory.barren, 'gone'));
    expect(codes(memory, memory.barren)).toEqual(['gone']);
  });

  it.each([
    ['a label of its own', { paper: 'labels' }],
    ['a set with labels', { paper: 'disposal', labels: true, fileName: 'disposal.pdf' }],
    ['a label from before papers had kinds', {}],
    ['an invented one from then', { fileName: 'invented-label-C-07-A6-2026-05-17.pdf' }],
  ])('is its label, until one is made (%s), and again once something went in', async (_, of) => {
    const memory = await disposalState();
    expect(gaps(memory, memory.barren)).toContainEqual({ code: 'label-not-made', made: null });
    await memory.does(labelled(memory.wash, of));
    expect(codes(memory, memory.barren)).toContain('label-not-made');
    await memory.does(labelled(memory.barren, of));
    const made = memory.now.value;
    expect(codes(memory, memory.barren)).not.toContain('label-not-made');
    memory.pass(60_000);
    await poured(memory, memory.barren);
    expect(gaps(memory, memory.barren)).toContainEqual({ code: 'label-not-made', made });
  });

  it('is its label once a laboratory has told of what is in it', async () => {
    const memory = await disposalState();
    await memory.does(labelled(memory.barren));
    memory.pass(60_000);
    await memory.does({
      do: 'log-lab-report',
      containerId: memory.barren,
      laboratory: 'Weir Laboratory',
      sampledOn: '2026-05-17',
      results: [{ element: 'Cd', in: 'tclp', level: { value: '1.4', unit: 'mg/L' } }],
    });
    expect(codes(memory, memory.barren)).toContain('label-not-made');
  });

  it('is no label that only a set without labels was made for', async () => {
    const memory = await disposalState();
    await memory.does(labelled(memory.barren, { paper: 'disposal', fileName: 'disposal.pdf' }));
    expect(codes(memory, memory.barren)).toContain('label-not-made');
  });

  it('is its time, from the day after the last one on', async () => {
    const memory = await disposalState();
    await memory.does({
      do: 'state-local-rule',
      stated: { rule: 'storage-days', value: { value: '90', unit: 'days' } },
      saidBy: 'County office',
      saidOn: '2026-05-01',
    });
    // Waste first in on 17 May; no more than 90 days, by the careful count the first day is one of them: 14 August.
    expect(codes(memory, memory.barren, '2026-08-14T20:00:00.000Z')).not.toContain('storage-over');
    expect(gaps(memory, memory.barren, '2026-08-15T20:00:00.000Z')).toContainEqual({
      code: 'storage-over',
      day: '2026-08-14',
      daysOver: 1,
    });
  });
});

describe('too full', () => {
  it('takes out as much as brings it to its limit, and not a tenth of a litre more', () => {
    const litres = fc
      .integer({ min: 1, max: 40_000 })
      .map((thousandths) => new Decimal(thousandths).div(1000));
    fc.assert(
      fc.property(litres, litres, (limit, over) => {
        const holds = limit.plus(over);
        const out = tooFullBy({ holds: holds.toFixed(), limit: limit.toFixed() });
        expect(holds.minus(out).lte(limit)).toBe(true);
        expect(holds.minus(out).plus('0.1').gt(limit)).toBe(true);
      }),
    );
  });
});

describe('what a place has not said', () => {
  it('asks for a licence only of a collector that is named', async () => {
    const memory = await disposalState();
    expect(gapsOfPlace(memory.state.value)).toEqual([
      'generator-number',
      'authority',
      'collector',
      'laws',
      'storage-days',
      'treatment-allowed',
    ]);
    const described = { name: 'Kiln Yard', address: 'Kiln Yard 3', emergencyNumber: '112' };
    const collector = { name: 'Fenwater', contact: '0000' };
    await memory.does({ do: 'describe-workshop', ...described, collector });
    expect(gapsOfPlace(memory.state.value)).toContain('licence');
    await memory.does({
      do: 'describe-workshop',
      ...described,
      collector: { ...collector, licence: 'L 1' },
    });
    expect(gapsOfPlace(memory.state.value)).not.toContain('licence');
    expect(gapsOfPlace(memory.state.value)).not.toContain('collector');
  });

  it('asks for the whole description, and not for its parts, where there is none', async () => {
    const { state } = await disposalState();
    expect(gapsOfPlace({ ...state.value, workshop: null }).slice(0, 2)).toEqual(['workshop', 'laws']);
  });
});

describe('what must not stand beside each other', () => {
  it('is found whatever is named first, with all that hold the one and the other', async () => {
    const memory = await disposalState();
    const can = await memory.opens('C-09', '1');
    const volume = { value: '0.2', unit: 'L' } as const;
    await memory.logs(can, null, 'ammonia-test-waste', { volume, findings: [], freeAcid: [] });
    const second = await memory.opens('C-10', '5');
    await memory.logs(second, null, 'barren-liquor', { ...barrenLiquor, volume });
    const ids = [memory.barren, can, second];
    const told = (order: readonly string[]) =>
      apartAmong(memory.state.value, order).map(({ a, b, withA, withB }) => [
        a,
        b,
        withA.toSorted(),
        withB.toSorted(),
      ]);
    expect(told(ids)).toEqual([
      ['ammonia-test-waste', 'barren-liquor', [can], [memory.barren, second].toSorted()],
    ]);
    fc.assert(
      fc.property(fc.shuffledSubarray(ids, { minLength: 3 }), (order) => {
        expect(told(order)).toEqual(told(ids));
      }),
    );
    expect(told([memory.barren, second])).toEqual([]);
  });
});

describe('codes that wait for a word', () => {
  const transport = (memory: Memory) => {
    const container = containerOf(memory, memory.barren);
    const all = candidatesOf(memory.state.value, container);
    if (typeof all === 'string') throw new Error(all);
    return stillToSay(container, all).find(({ scheme }) => scheme === 'transport');
  };

  it('wait until one transport entry is confirmed, and again for other contents', async () => {
    const memory = await disposalState();
    const [code = ''] = transport(memory)?.waiting ?? [];
    expect(code).toMatch(/^UN \d{4}/);
    await memory.does({
      do: 'answer-candidate',
      containerId: memory.barren,
      scheme: 'transport',
      code,
      answer: 'accepted',
      saidBy: 'Fenwater Collection',
      saidOn: '2026-05-16',
    });
    expect(transport(memory)?.waiting).toEqual([]);
    expect(transport(memory)?.said.map(({ body }) => body.code)).toEqual([code]);
    memory.pass(60_000);
    await poured(memory, memory.barren);
    expect(transport(memory)?.waiting).toContain(code);
    expect(transport(memory)?.said).toEqual([]);
  });
});

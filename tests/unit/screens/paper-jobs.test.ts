/** What the worker runs, run here: how far a paper is while it is made, and what keeps one from being made. */
import * as fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Progress, Stage } from '../../../src/paperwork/progress';
import { howFar } from '../../../src/screens/papers/how-far';
import { type Job, runJob } from '../../../src/screens/papers/jobs';
import { type Common, madeOf } from '../../../src/screens/papers/making';
import { paperFonts } from '../../support/paper-fonts';
import { readPdf } from '../../support/read-pdf';
import { disposalState } from '../paperwork/disposal-state';

const fonts = vi.hoisted(() => ({ fault: null as Error | null }));

vi.mock('../../../src/paperwork/pdf/fonts', () => ({
  loadFonts: async () => {
    if (fonts.fault) throw fonts.fault;
    return paperFonts;
  },
}));

afterEach(() => {
  fonts.fault = null;
  vi.restoreAllMocks();
});

async function asked() {
  const memory = await disposalState();
  const common: Common = {
    state: memory.state.value,
    now: memory.now.value,
    zone: 'Europe/Paris',
    madeBy: 'Maren',
    sign: '.',
    demo: false,
    appAddress: 'https://book.example/',
  };
  const containerIds = [memory.barren, memory.wash];
  const wanted = { containerIds, sheet: 'A4', working: true, labels: true, signature: null } as const;
  return { common, job: { kind: 'disposal', wanted } satisfies Job };
}

const order: readonly Stage[] = ['reading', 'gathering', 'setting', 'drawing', 'closing'];

describe('a paper tells how far it is', () => {
  test('by the containers that are gathered and the pages that are drawn, each once and none before its turn', async () => {
    const { common, job } = await asked();
    const told: Progress[] = [];
    const made = await runJob(
      structuredClone(job),
      () => common,
      (progress) => told.push(progress),
    );
    if (!made.ok) throw new Error(JSON.stringify(made));
    const [pdf] = made.paper.files;
    const { pages } = await readPdf(pdf.bytes);
    const of = (stage: Stage) => told.filter((one) => one.stage === stage);
    expect(of('gathering').slice(0, 2)).toEqual([
      { stage: 'gathering', done: 0, of: 2 },
      { stage: 'gathering', done: 1, of: 2 },
    ]);
    expect(of('drawing').map(({ done }) => done)).toEqual(pages.map((_, index) => index));
    expect(of('drawing')[0]?.of).toBe(pages.length);
    expect(of('closing')).toHaveLength(1);
    const stages = told.map(({ stage }) => order.indexOf(stage));
    expect(stages).toEqual(stages.toSorted((a, b) => a - b));
  });

  test('in parts of a hundred that never fall, whatever has how many steps', () => {
    const steps = fc.tuple(...order.map(() => fc.integer({ min: 1, max: 300 })));
    fc.assert(
      fc.property(steps, (counts) => {
        const percents = order.flatMap((stage, at) =>
          Array.from({ length: counts[at] ?? 1 }, (_, done) =>
            howFar({ stage, done, of: counts[at] ?? 1 }),
          ).map(({ percent }) => percent),
        );
        expect(percents).toEqual(percents.toSorted((a, b) => a - b));
        expect(percents[0]).toBeGreaterThan(0);
        expect(percents.at(-1)).toBeLessThanOrEqual(100);
      }),
    );
  });
});

describe('what keeps a paper from being made', () => {
  test('a part that is not on the phone', async () => {
    vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    fonts.fault = new Error('no network');
    const { common, job } = await asked();
    const made = await runJob(
      job,
      () => common,
      () => undefined,
    );
    expect(made).toEqual({ ok: false, failure: { code: 'not-loaded' } });
  });

  test.each([
    [new RangeError('Array buffer allocation failed'), { code: 'too-large' }],
    [new RangeError('Invalid array length'), { code: 'too-large' }],
    [
      new RangeError('toFixed() digits argument must be between 0 and 100'),
      { code: 'not-made', name: 'RangeError' },
    ],
    [new TypeError('x is not a function'), { code: 'not-made', name: 'TypeError' }],
  ])('%s', async (fault, failure) => {
    vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    const { job } = await asked();
    const made = await runJob(
      job,
      () => {
        throw fault;
      },
      () => undefined,
    );
    expect(made).toEqual({ ok: false, failure });
  });
});

test('the paper comes first, and what goes with it after it, under their names', async () => {
  const { common, job } = await asked();
  const made = madeOf(
    await runJob(
      job,
      () => common,
      () => undefined,
    ),
  );
  if (!made.ok) throw new Error(JSON.stringify(made));
  const { file, besides } = made.paper;
  expect([file.type, file.name.split('.').at(-1)]).toEqual(['application/pdf', 'pdf']);
  expect(besides.map(({ type }) => type)).toContain('application/json');
  expect(new TextDecoder().decode((await file.arrayBuffer()).slice(0, 5))).toBe('%PDF-');
});

/** A page while its paper is made elsewhere: the bar, the way to give it up, and whatever may go wrong over there. */
import { act, cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { candidatesOf } from '../../../src/ledger/container-candidates';
import { CheckSet } from '../../../src/screens/papers/check';
import { makeInWorker } from '../../../src/screens/papers/make-in-worker';
import type { MadePaper } from '../../../src/screens/papers/making';
import type { Order } from '../../../src/screens/papers/paper-worker';
import { ShellProvider } from '../../../src/screens/shell';
import { open, tap, user } from '../../support/hand';
import { paperFonts } from '../../support/paper-fonts';
import { disposalState } from '../paperwork/disposal-state';

vi.mock('../../../src/ledger/container-candidates', { spy: true });
vi.mock('../../../src/paperwork/pdf/fonts', () => ({ loadFonts: async () => paperFonts }));

/** Stands where the browser has its worker: the test says what it says. */
class HeldWorker extends EventTarget {
  static all: HeldWorker[] = [];
  order: Order | undefined;
  ended = false;
  readonly address: string;

  constructor(address: URL) {
    super();
    this.address = String(address);
    HeldWorker.all.push(this);
  }

  postMessage(order: Order): void {
    this.order = structuredClone(order);
  }

  terminate(): void {
    this.ended = true;
  }

  says(data: unknown): Promise<void> {
    return act(() => void this.dispatchEvent(new MessageEvent('message', { data })));
  }

  breaks(): Promise<void> {
    return act(() => void this.dispatchEvent(new ErrorEvent('error', { message: 'broken' })));
  }
}

const worker = (): HeldWorker => {
  const last = HeldWorker.all.at(-1);
  if (!last) throw new Error('no worker was begun');
  return last;
};

beforeEach(() => {
  HeldWorker.all = [];
  vi.stubGlobal('Worker', HeldWorker);
  vi.spyOn(console, 'warn').mockImplementation(() => undefined);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

type Memory = Awaited<ReturnType<typeof disposalState>>;
const papersIn = ({ state }: Memory) => [...state.value.papers.values()].map(({ body }) => body);
const bar = () => screen.getByRole('progressbar');

/** The page of labels, with both containers ticked and the small size chosen; the paper has begun. */
async function begun() {
  const memory = await disposalState();
  const shell = { ...memory.shell, makePaper: makeInWorker('real') };
  open(shell, 'papers/labels');
  await screen.findByRole('heading', { name: 'Labels' });
  for (const name of [/C.07/, /C.02/]) await user.click(screen.getByRole('checkbox', { name }));
  await user.click(screen.getByRole('radio', { name: /^Small/ }));
  await tap(/Make the labels/);
  return memory;
}

const expectForm = (): void => {
  for (const name of [/C.07/, /C.02/])
    expect(screen.getByRole('checkbox', { name })).toHaveProperty('checked', true);
  expect(screen.getByRole('radio', { name: /^Small/ })).toHaveProperty('checked', true);
  expect(screen.getByRole('button', { name: /Make the labels/ })).toHaveProperty('disabled', false);
};

const paper: MadePaper = {
  containerIds: [],
  codes: ['C-07'],
  contentHash: 'a'.repeat(64),
  file: new File(['%PDF'], 'label.pdf', { type: 'application/pdf' }),
  besides: [],
};

describe('while a paper is made', () => {
  test('the worker is given the record as entries, and the bar moves as it says', async () => {
    const memory = await begun();
    expect(worker().order?.of).toEqual({ log: memory.state.value.log });
    expect(worker().order?.job.kind).toBe('labels');
    expect(bar().getAttribute('aria-valuenow')).toBe('0');
    await worker().says({ progress: { stage: 'gathering', done: 1, of: 2 } });
    const half = Number(bar().getAttribute('aria-valuenow'));
    expect(half).toBeGreaterThan(0);
    expect(bar().getAttribute('aria-valuetext')).toBe('Gathering what is known: 1 of 2');
    expect(bar().getAttribute('aria-label')).toBe('Making the labels …');
    await worker().says({ progress: { stage: 'drawing', done: 1, of: 2 } });
    expect(Number(bar().getAttribute('aria-valuenow'))).toBeGreaterThan(half);
    await worker().says({ made: { ok: true, paper } });
    await screen.findByText('The label is made');
    expect(papersIn(memory)).toMatchObject([{ fileName: 'label.pdf', contentHash: paper.contentHash }]);
    expect(worker().ended).toBe(true);
  });

  test('cancelling ends the worker, writes nothing, and leaves the form as it was', async () => {
    const memory = await begun();
    await worker().says({ progress: { stage: 'setting', done: 1, of: 4 } });
    memory.pass(1000);
    await tap(/^Cancel/);
    expect(worker().ended).toBe(true);
    expectForm();
    expect(screen.queryByRole('alert')).toBeNull();
    await worker().says({ made: { ok: true, paper } });
    expect(papersIn(memory)).toEqual([]);
    expectForm();
    await tap(/Make the labels/);
    expect(HeldWorker.all).toHaveLength(2);
  });

  test('the second drop of the tap that began it does not cancel', async () => {
    const memory = await begun();
    memory.pass(150);
    await tap(/^Cancel/);
    expect(worker().ended).toBe(false);
    memory.pass(400);
    await tap(/^Cancel/);
    expect(worker().ended).toBe(true);
  });

  test('leaving the page ends it', async () => {
    const memory = await begun();
    cleanup();
    await vi.waitFor(() => expect(worker().ended).toBe(true));
    expect(papersIn(memory)).toEqual([]);
  });

  test('a worker of which nothing is heard is told of, and can still be cancelled', async () => {
    const memory = await begun();
    vi.useFakeTimers();
    await worker().says({ progress: { stage: 'gathering', done: 0, of: 2 } });
    await act(() => void vi.advanceTimersByTime(29_000));
    expect(screen.queryByText(/Nothing has moved/)).toBeNull();
    await act(() => void vi.advanceTimersByTime(2_000));
    expect(screen.getByText(/Nothing has moved/)).toBeDefined();
    await worker().says({ progress: { stage: 'gathering', done: 1, of: 2 } });
    expect(screen.queryByText(/Nothing has moved/)).toBeNull();
    vi.useRealTimers();
    memory.pass(1000);
    await tap(/^Cancel/);
    expectForm();
  });
});

test('what the check of a set works out ends as the set is begun, and does not begin again as it is written down', async () => {
  const memory = await disposalState();
  const [set = ''] = memory.state.value.containers.keys();
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const asked = vi.mocked(candidatesOf);
  const later = () => act(() => void vi.advanceTimersByTime(20_000));
  const page = () =>
    render(
      <ShellProvider value={{ ...memory.shell, makePaper: makeInWorker('real') }}>
        <CheckSet at={{ set }} />
      </ShellProvider>,
    );
  page();
  await later();
  expect(asked).toHaveBeenCalled();
  cleanup();
  asked.mockClear();
  page();
  fireEvent.click(screen.getByRole('button', { name: /^Make the set/ }));
  await later();
  await worker().says({ made: { ok: true, paper } });
  await vi.waitFor(() => expect(screen.getByText('The paper is made')).toBeDefined());
  await later();
  expect(papersIn(memory)).toHaveLength(1);
  expect(asked).not.toHaveBeenCalled();
});

describe('a paper that cannot be made says why, and leaves the form', () => {
  test('where the worker does not come up', async () => {
    const memory = await begun();
    await worker().breaks();
    expect((await screen.findByRole('alert')).textContent).toMatch(/is not on this phone yet/);
    expect(worker().ended).toBe(true);
    expectForm();
    expect(papersIn(memory)).toEqual([]);
  });

  test('where it breaks on the way', async () => {
    await begun();
    await worker().says({ progress: { stage: 'gathering', done: 1, of: 2 } });
    await worker().breaks();
    expect((await screen.findByRole('alert')).textContent).toMatch(/could not be made \(worker\)/);
    expectForm();
  });

  test('where the phone has no memory for it', async () => {
    await begun();
    await worker().says({ made: { ok: false, failure: { code: 'too-large' } } });
    expect((await screen.findByRole('alert')).textContent).toMatch(/not enough memory/);
    expectForm();
  });

  test('where no worker can be begun', async () => {
    vi.stubGlobal('Worker', function none() {
      throw new DOMException('not here', 'SecurityError');
    });
    await begun();
    expect((await screen.findByRole('alert')).textContent).toMatch(/could not be made \(SecurityError\)/);
    expectForm();
  });
});

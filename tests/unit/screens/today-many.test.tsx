import { screen, waitFor } from '@testing-library/preact';
import { expect, it } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { foldAll } from '../../../src/ledger/fold';
import { codesText } from '../../../src/screens/amounts';
import { open } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

/** So many containers; of the last nobody knows what is in it. */
async function standing(containers: number) {
  const memory = await workshopInMemory();
  for (let n = 1; n <= containers; n += 1)
    await memory.does({
      do: 'open-container',
      code: `C-${n}`,
      vessel: 'jerrican',
      capacity: { value: '5', unit: 'L' },
      material: 'HDPE',
      cap: 'vented',
      openedOn: '2026-05-12',
    });
  const last = [...memory.state.value.containers.keys()].at(-1) ?? '';
  await memory.does({ do: 'mark-container', containerId: last, mark: 'contents-doubtful', note: 'no label' });
  return memory;
}

const looking = () => screen.queryByText('What is wrong: being worked out');
const inOrder = () => screen.queryByText(/in order/);
const onShelf = () => document.querySelectorAll('a[href^="#/containers/0"]').length;

it('of many containers Today stands before what is wrong is worked out, and calls nothing in order until then', async () => {
  const { shell } = await standing(9);
  open(shell, 'today');
  expect(looking()).not.toBeNull();
  expect(inOrder()).toBeNull();
  // As many as a phone shows, and then all.
  expect(onShelf()).toBe(8);
  await waitFor(() => expect(looking()).toBeNull());
  expect(inOrder()?.textContent).toBe('1 container needs a look. 8 are in order.');
  expect(onShelf()).toBeGreaterThanOrEqual(9);
});

it('worked out once, what is wrong stands there at once, after an entry too', async () => {
  const { shell, does } = await standing(9);
  open(shell, 'today');
  await waitFor(() => expect(looking()).toBeNull());
  await does({ do: 'add-person', name: 'Wies' });
  open(shell, 'today');
  expect(looking()).toBeNull();
  expect(inOrder()).not.toBeNull();
});

it('of a few containers nobody waits', async () => {
  const { shell } = await standing(8);
  open(shell, 'today');
  expect(looking()).toBeNull();
  expect(inOrder()?.textContent).toBe('1 container needs a look. 7 are in order.');
});

it('one of which nobody knows what is in it is not called in order, though nothing presses of it', async () => {
  const { shell, state } = await standing(3);
  const [fromContainerId = '', toContainerId = ''] = state.value.containers.keys();
  const last = state.value.log.at(-1) as Entry;
  // Of another phone: more than the one holds by the record, and nobody knows what came into the other.
  const body = {
    ...({ kind: 'contents-moved', v: 1, purpose: 'transfer' } as const),
    ...{ fromContainerId, toContainerId, amount: { value: '2', unit: 'L' } as const },
  };
  const id = '00000000-0000-7000-8000-00000000f001';
  state.value = foldAll(state.value, [{ ...last, id, counter: last.counter + 1, body }]);
  open(shell, 'today');
  expect(inOrder()).toBeNull();
  expect(screen.getByText('2 containers need a look. 1 is not determined.')).toBeTruthy();
});

it('an entry about what is not here is to be left as it is: what it is about may come back', async () => {
  const { shell, state } = await standing(1);
  const last = state.value.log.at(-1) as Entry;
  const containerId = '00000000-0000-7000-8000-00000000dead';
  const body = { kind: 'container-marked', v: 1, containerId, mark: 'closed' } as const;
  const id = '00000000-0000-7000-8000-00000000f001';
  state.value = foldAll(state.value, [{ ...last, id, counter: last.counter + 1, body }]);
  open(shell, 'today');
  expect(screen.getByText('What an entry is about is not here')).toBeTruthy();
  expect(screen.queryByText(/withdraw it/)).toBeNull();
});

it('two containers of the same code are both to be looked at, and neither is called in order', async () => {
  const { shell, state } = await standing(3);
  const opened = [...state.value.log].find(({ body }) => body.kind === 'container-opened') as Entry;
  // Of another phone that was apart.
  const containerId = '00000000-0000-7000-8000-00000000c001';
  const id = '00000000-0000-7000-8000-00000000f001';
  const body = { ...opened.body, containerId, code: 'c-1' } as Entry['body'];
  state.value = foldAll(state.value, [{ ...opened, id, counter: state.value.log.length + 1, body }]);
  open(shell, 'today');
  expect(screen.getByText('3 containers need a look. 1 is in order.')).toBeTruthy();
});

it('waste that stands while nobody has said for how long it may is not called in order', async () => {
  const { shell, state, does } = await standing(3);
  const [first = ''] = state.value.containers.keys();
  const volume = { value: '1.00', unit: 'L' } as const;
  await does({
    do: 'log-stream',
    batchId: null,
    stepId: null,
    stream: 'wash-water',
    liquid: { volume, findings: [], freeAcid: [] },
    placements: [{ containerId: first, amount: volume }],
  });
  open(shell, 'today');
  expect(inOrder()?.textContent).toBe('1 container needs a look. 1 is not determined. 1 is in order.');
});

it('of many codes in a row the first are named, and how many there are besides', () => {
  const codes = Array.from({ length: 36 }, (_, n) => `C-${n + 1}`);
  expect(codesText(codes)).toBe('C‑1, C‑2, C‑3 and 33 more');
  expect(codesText(codes.slice(0, 4))).toBe('C‑1, C‑2, C‑3, C‑4');
});

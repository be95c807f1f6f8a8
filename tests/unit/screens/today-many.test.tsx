import { screen, waitFor } from '@testing-library/preact';
import { expect, it } from 'vitest';
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

import { screen, waitFor } from '@testing-library/preact';
import { expect, it } from 'vitest';
import type { Entry } from '../../../src/ledger/entries/entry';
import { foldAll } from '../../../src/ledger/fold';
import { open } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

it('in the list of containers both of one code are marked, and one whose level is not what the record says', async () => {
  const memory = await workshopInMemory();
  for (const code of ['C-71', 'C-72', 'C-73'])
    await memory.does({
      do: 'open-container',
      code,
      vessel: 'jerrican',
      capacity: { value: '5', unit: 'L' },
      material: 'HDPE',
      cap: 'vented',
      openedOn: '2026-05-12',
    });
  const { state, shell } = memory;
  const second = [...state.value.containers.values()].find(({ body }) => body.code === 'C-72');
  await memory.does({
    do: 'log-level',
    containerId: second?.body.containerId ?? '',
    level: { value: '3', unit: 'L' },
  });
  const opened = state.value.log.find(
    ({ body }) => body.kind === 'container-opened' && body.code === 'C-71',
  ) as Entry;
  // Of another phone that was apart.
  const containerId = '00000000-0000-7000-8000-00000000c001';
  const id = '00000000-0000-7000-8000-00000000f001';
  const body = { ...opened.body, containerId } as Entry['body'];
  state.value = foldAll(state.value, [{ ...opened, id, counter: state.value.log.length + 1, body }]);
  open(shell, 'containers');
  await waitFor(() => expect(screen.queryAllByText('C‑71 is used twice')).toHaveLength(2));
  expect(await screen.findByText('C‑72: level and record disagree')).toBeTruthy();
  expect(screen.getByText('C‑73')).toBeTruthy();
});

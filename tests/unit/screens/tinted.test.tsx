/** In a long list the colour of what is in a container may wait for the page to rest; that nobody knows what is in it may not. */
import { act, render } from '@testing-library/preact';
import { expect, test } from 'vitest';
import type { State } from '../../../src/ledger/state';
import { useTinted } from '../../../src/screens/containers/use-tinted';
import { idle } from '../../../src/ui/idle';
import { workshopInMemory } from '../../support/shell-in-memory';
import { logLiquid, openCan } from '../../support/waste-in-cans';

test('a doubt shows at once, before the page rests', async () => {
  const workshop = await workshopInMemory();
  const { state, does } = workshop;
  const id = await openCan(workshop);
  await logLiquid(workshop, 'wash-water', { value: '1', unit: 'L' }, id);
  const drawn: string[] = [];
  function Drawn({ of }: { readonly of: State }) {
    const container = of.containers.get(id);
    if (container) drawn.push(useTinted(of, container).tint);
    return null;
  }
  const { rerender } = render(<Drawn of={state.value} />);
  await act(() => new Promise<void>((rested) => idle(() => rested())));
  expect(drawn.at(-1)).not.toBe('unknown');
  await does({ do: 'mark-container', containerId: id, mark: 'contents-doubtful', doubt: 'found' });
  const before = drawn.length;
  rerender(<Drawn of={state.value} />);
  expect(drawn[before]).toBe('unknown');
});

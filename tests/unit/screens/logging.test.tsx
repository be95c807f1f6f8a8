import { act, fireEvent, screen, waitFor } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { StreamKind } from '../../../src/safety/stream-kind';
import { choose, fill, open, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { logLiquid, openCan } from '../../support/waste-in-cans';

const anyway = () => screen.queryByRole('button', { name: 'It is in already. Write it down.' });
const litres = (value: string) => ({ value, unit: 'L' }) as const;

/** A workshop with two containers of 5 L; `holding` logs a waste and puts it into one of them. */
async function withContainers() {
  const memory = await workshopInMemory();
  const can = () => openCan(memory);
  const log = (stream: StreamKind, volume: Parameters<typeof logLiquid>[2], containerId?: string) =>
    logLiquid(memory, stream, volume, containerId);
  const [first, second] = [await can(), await can()];
  const holds = (id: string) => memory.state.value.containers.get(id)?.holds.volume.toFixed();
  return { ...memory, can, log, first, second, holds, form: `batches/${memory.batch}/log/barren-liquor` };
}

describe('logging a liquid', () => {
  test('two taps in one tick write it once', async () => {
    const { shell, state, form } = await withContainers();
    open(shell, form);
    await fill('Volume', '3.00');
    await choose('Into which container', 'later');
    const keep = screen.getByRole('button', { name: 'Keep this barren liquor' });
    await act(async () => {
      fireEvent.click(keep);
      fireEvent.click(keep);
    });
    await waitFor(() => expect(state.value.streams.size).toBe(1));
    expect(state.value.log.filter(({ body }) => body.kind === 'stream-logged')).toHaveLength(1);
  });

  test('copper assumed between two values is one unit, and can be chosen at either', async () => {
    const { shell, form } = await withContainers();
    open(shell, form);
    await fill('Volume', '3.00');
    await choose('Copper, how it is known', 'assumed');
    await fill('Copper, at least', '5');
    await fill('Copper, at most', '20');
    const unit = (label: string) => screen.getByLabelText<HTMLSelectElement>(`${label}, unit`);
    expect(unit('Copper, at most').value).toBe('g/L');
    await user.selectOptions(unit('Copper, at most'), 'g');
    expect(unit('Copper, at least').value).toBe('g');
    expect(screen.getByLabelText<HTMLInputElement>('Copper, at least').value).toBe('');
  });

  test('offers closed and doubtful containers, says their state, and writes what is in already', async () => {
    const { shell, does, first, second, holds, form } = await withContainers();
    await does({ do: 'mark-container', containerId: first, mark: 'closed' });
    await does({ do: 'mark-container', containerId: second, mark: 'contents-doubtful' });
    open(shell, form);
    expect(screen.getByRole('option', { name: /^C.01: .*closed$/ })).toBeTruthy();
    expect(screen.getByRole('option', { name: /^C.02: .*contents not known$/ })).toBeTruthy();
    await fill('Volume', '3.00');
    await choose('Into which container', first);
    await tap('Keep this barren liquor');
    expect(screen.getByRole('alert').textContent).toContain('This container is closed');
    await tap('It is in already. Write it down.');
    await waitFor(() => expect(holds(first)).toBe('3'));
  });

  test('what was said of one container is not said, nor overruled, for another', async () => {
    const { shell, log, does, pass, first, second, holds, form } = await withContainers();
    await does({ do: 'mark-container', containerId: first, mark: 'closed' });
    await log('ammonia-test-waste', litres('0.10'), second);
    open(shell, form);
    await fill('Volume', '3.00');
    await choose('Into which container', first);
    await tap('Keep this barren liquor');
    expect(anyway()).toBeTruthy();
    await choose('Into which container', second);
    expect(anyway()).toBeNull();
    expect(screen.queryByRole('alert')).toBeNull();
    await tap('Keep this barren liquor');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toContain('must not meet');
    pass(1000);
    await tap('Back');
    await fill('Volume', '3.01');
    expect(anyway()).toBeNull();
    expect(holds(second)).toBe('0.1');
  });

  test('20 L into a new container of 5 L is said first, opens nothing, and can be written down', async () => {
    const { shell, state, form } = await withContainers();
    open(shell, form);
    await fill('Volume', '20');
    await choose('Into which container', 'new');
    await tap('Keep this barren liquor');
    expect(screen.getByRole('alert').textContent).toContain('more than fits');
    expect(state.value.containers.size).toBe(2);
    await tap('It is in already. Write it down.');
    await waitFor(() => expect(state.value.streams.size).toBe(1));
    expect(state.value.containers.size).toBe(3);
    expect([...state.value.containers.values()].at(-1)?.holds.volume.toFixed()).toBe('20');
  });

  test('it was earlier: written with that moment, its new container too, and never in the future', async () => {
    const { shell, state, form } = await withContainers();
    open(shell, form);
    await fill('Volume', '3.00');
    await choose('Into which container', 'new');
    await fill('When', '2026-05-13T09:30');
    expect(screen.getByText('Choose a day and hour that have passed.')).toBeTruthy();
    await tap('Keep this barren liquor');
    expect(state.value.streams.size).toBe(0);
    await fill('When', '2026-05-11T09:30');
    await tap('Keep this barren liquor');
    await waitFor(() => expect(state.value.streams.size).toBe(1));
    const at = new Date('2026-05-11T09:30').toISOString();
    expect([...state.value.streams.values()][0]?.at).toBe(at);
    const container = [...state.value.containers.values()].at(-1);
    expect(container).toMatchObject({ at, firstWasteIn: at, body: { openedOn: '2026-05-11' } });
  });

  test('a form that was left says that it was begun, and can be begun again', async () => {
    const { shell, drafts, form } = await withContainers();
    const before = open(shell, form);
    expect(screen.queryByText('You had begun this.')).toBeNull();
    await fill('Volume', '3.00');
    expect(screen.queryByText('You had begun this.')).toBeNull();
    before.unmount();
    open(shell, form);
    expect(screen.getByText('You had begun this.')).toBeTruthy();
    expect(screen.getByLabelText<HTMLInputElement>('Volume').value).toBe('3.00');
    await tap('Begin again');
    expect(screen.getByLabelText<HTMLInputElement>('Volume').value).toBe('');
    expect(screen.queryByText('You had begun this.')).toBeNull();
    expect(drafts.size).toBe(0);
  });

  test('a full disk is said until it works again, also after a key', async () => {
    const { shell, state, breakStore, form } = await withContainers();
    open(shell, form);
    await fill('Volume', '3.00');
    await choose('Into which container', 'later');
    breakStore({ code: 'disk-full' });
    await tap('Keep this barren liquor');
    await fill('Colour and layers seen', 'green');
    expect(screen.getByRole('alert').textContent).toContain('The phone is full');
    breakStore(null);
    await tap('Keep this barren liquor');
    await waitFor(() => expect(state.value.streams.size).toBe(1));
  });
});

describe('putting a logged waste into a container', () => {
  test.each(['closed', 'contents-doubtful', 'over'] as const)(
    'is refused when %s, and written down when it is in already',
    async (why) => {
      const { shell, does, log, first, holds } = await withContainers();
      if (why === 'over') await log('barren-liquor', litres('3.5'), first);
      else await does({ do: 'mark-container', containerId: first, mark: why });
      const before = Number(holds(first));
      const stream = await log('barren-liquor', litres('2.00'));
      open(shell, `containers/${first}/in/${stream}`);
      await tap(/^All of it/);
      expect(await screen.findByRole('alert')).toBeTruthy();
      expect(Number(holds(first))).toBe(before);
      await tap('It is in already. Write it down.');
      await waitFor(() => expect(Number(holds(first))).toBe(before + 2));
    },
  );

  test('a refusal goes as soon as the amount is changed', async () => {
    const { shell, does, log, first } = await withContainers();
    await does({ do: 'mark-container', containerId: first, mark: 'closed' });
    open(shell, `containers/${first}/in/${await log('barren-liquor', litres('2.00'))}`);
    await tap(/^All of it/);
    await screen.findByRole('alert');
    await fill('How much goes in', '1');
    expect(screen.queryByRole('alert')).toBeNull();
    expect(anyway()).toBeNull();
  });

  test('the rest of 1.3 US gal after 1.00 L is offered as it can be read, and nothing is left over', async () => {
    const { shell, state, does, log, first, second } = await withContainers();
    const streamId = await log('barren-liquor', { value: '1.3', unit: 'US gal' });
    await does({ do: 'place-stream', streamId, containerId: first, amount: litres('1.00') });
    open(shell, `containers/${second}/in/${streamId}`);
    await fill('When', '2026-05-13T09:30');
    await tap(/^All of it: 3\.921\u202fL/);
    expect(state.value.containers.get(second)?.movements).toHaveLength(0);
    await fill('When', '');
    await tap(/^All of it: 3\.921\u202fL/);
    await waitFor(() => expect(state.value.containers.get(second)?.movements).toHaveLength(1));
    expect(state.value.streams.get(streamId)?.unplaced.volume.toFixed()).toBe('0');
  });
});

describe('taking out', () => {
  const units = (label: string) =>
    [...screen.getByLabelText<HTMLSelectElement>(`${label}, unit`).options].map(({ value }) => value);

  test('a container of liquid gives litres only', async () => {
    const { shell, log, first } = await withContainers();
    await log('barren-liquor', litres('3'), first);
    open(shell, `containers/${first}/out`);
    expect(units('Take out')).toEqual(['L', 'mL', 'US gal']);
  });

  test('into a closed container is refused, and written down with its hour when it is in already', async () => {
    const { shell, pass, does, log, first, second, holds, state } = await withContainers();
    await log('barren-liquor', litres('3'), first);
    await does({ do: 'mark-container', containerId: second, mark: 'closed' });
    pass(3_600_000);
    open(shell, `containers/${first}/out`);
    expect(screen.getByRole('option', { name: /^C.02: .*closed$/ })).toBeTruthy();
    await fill('Take out', '1');
    await choose('Into which', second);
    const earlier = new Date(Date.parse(shell.moment()) - 1_800_000);
    const local = new Date(earlier.getTime() - earlier.getTimezoneOffset() * 60_000)
      .toISOString()
      .slice(0, 16);
    await fill('When', local);
    await tap('Write it down');
    expect((await screen.findByRole('alert')).textContent).toContain('closed');
    await tap('It is in already. Write it down.');
    await waitFor(() => expect(holds(second)).toBe('1'));
    expect(state.value.log.at(-1)?.happenedAt).toBe(earlier.toISOString());
  });
});

test('a mark can have been earlier, never later than now', async () => {
  const { shell, state, first } = await withContainers();
  open(shell, `containers/${first}/mark/closed`);
  await fill('When', '2026-05-13T09:30');
  await tap('Write it down');
  expect(state.value.containers.get(first)?.closedAt).toBeNull();
  const before = state.value.log.length;
  await fill('When', '2026-05-12T00:30');
  await tap('Write it down');
  await waitFor(() => expect(state.value.log.length).toBe(before + 1));
  expect(state.value.log.at(-1)?.happenedAt).toBe(new Date('2026-05-12T00:30').toISOString());
});

test('a day without its hour is not taken for now', async () => {
  const { shell, state, form } = await withContainers();
  open(shell, form);
  await fill('Volume', '3.00');
  await choose('Into which container', 'later');
  const when = screen.getByLabelText<HTMLInputElement>('When');
  // What a browser says of a half-typed date: no value, and bad input.
  const validity = { badInput: true };
  Object.defineProperty(when, 'validity', { get: () => validity });
  await user.click(when);
  await tap('Keep this barren liquor');
  expect(screen.getByText('Choose a day and hour that have passed.')).toBeTruthy();
  expect(state.value.streams.size).toBe(0);
  validity.badInput = false;
  await user.click(when);
  await tap('Keep this barren liquor');
  await waitFor(() => expect(state.value.streams.size).toBe(1));
});

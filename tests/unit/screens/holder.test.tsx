/** Who holds the phone is asked once a backup was restored, and told on Today while nobody does. */
import { screen, waitFor } from '@testing-library/preact';
import { describe, expect, it } from 'vitest';
import { open, tap } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

async function heldByNobody(...names: readonly string[]) {
  const memory = await workshopInMemory();
  for (const name of names) await memory.does({ do: 'add-person', name });
  memory.shell.choosePerson(null);
  return memory;
}

const idOf = ({ state }: Awaited<ReturnType<typeof heldByNobody>>, name: string) =>
  [...state.value.people.values()].find(({ body }) => body.name === name)?.body.personId;

const row = () => screen.queryByRole('link', { name: /^Nobody holds the phone/ });

describe('while nobody holds the phone', () => {
  it('Today says so, and leads to where it is said', async () => {
    const memory = await heldByNobody('Wies');
    open(memory.shell, 'today');
    expect(row()?.getAttribute('href')).toBe('#/record/holder');
    memory.shell.choosePerson(idOf(memory, 'Wies') ?? '');
    open(memory.shell, 'today');
    expect(row()).toBeNull();
  });

  it('one tap on a name says it, and the next entry is theirs', async () => {
    const memory = await heldByNobody('Wies', 'Halvard');
    memory.path.value = ['record', 'holder'];
    open(memory.shell, 'record/holder');
    expect(screen.getByRole('link', { name: 'Somebody else' })).toBeTruthy();
    await tap('Halvard');
    expect(memory.shell.person.value).toBe(idOf(memory, 'Halvard'));
    expect(memory.shell.path.value).toEqual(['today']);
    await memory.does({ do: 'add-person', name: 'Enno' });
    expect(memory.state.value.log.at(-1)?.who).toBe(idOf(memory, 'Halvard'));
  });
});

it('nobody is asked where no people are written down, or all have left', async () => {
  const memory = await heldByNobody();
  for (const { body } of memory.state.value.people.values())
    await memory.does({ do: 'person-leaves', personId: body.personId });
  open(memory.shell, 'today');
  expect(row()).toBeNull();
  memory.path.value = ['record', 'holder'];
  open(memory.shell, 'record/holder');
  await waitFor(() => expect(memory.path.value).toEqual(['today']));
});

/** Going through a checklist at the bench: the screens at their addresses, a person who looks before tapping, a reload. */
import { act, cleanup, fireEvent, render, screen } from '@testing-library/preact';
import { loadEveryday, screenAt } from '../../../src/app/routes';
import { workshopLists } from '../../../src/ledger/workshop-lists';
import type { Item } from '../../../src/safety/checklist-item';
import { checklists } from '../../../src/safety/checklists';
import { sentence } from '../../../src/screens/checklist/words';
import { ShellProvider } from '../../../src/screens/shell';
import { workshopInMemory } from '../../support/shell-in-memory';

await loadEveryday();

export type Workshop = Awaited<ReturnType<typeof workshopInMemory>>;

function Screens({ path }: { readonly path: Workshop['path'] }) {
  const found = screenAt(path.value);
  const key = path.value.join('/');
  if (!found) return <p>{key}</p>;
  const { screen: Screen, at } = found;
  return <Screen key={key} at={at} />;
}

export const show = (workshop: Workshop) =>
  render(
    <ShellProvider value={workshop.shell}>
      <Screens path={workshop.path} />
    </ShellProvider>,
  );

/** Reload: everything on the screen is gone, what was kept is there. */
export function reload(workshop: Workshop): void {
  cleanup();
  show(workshop);
}

/** Goes to an address as a tap on its link does. */
export async function goTo(workshop: Workshop, address: string): Promise<void> {
  await act(async () => workshop.shell.go(address.replace(/^#\//, '')));
}

export const heading = (): string => screen.getByRole('heading', { level: 1 }).textContent ?? '';

/** Looks for a second, then taps. */
export async function tap(workshop: Workshop, name: string | RegExp): Promise<void> {
  await act(async () => workshop.pass(1_000));
  await act(async () => {
    fireEvent.click(screen.getByRole('button', { name }));
  });
}

/** Where a row or a button leads. */
export const leadsTo = (name: string | RegExp): string =>
  screen.getByRole('link', { name }).getAttribute('href') ?? '';

export async function key(workshop: Workshop, digits: string): Promise<void> {
  for (const digit of digits) await tap(workshop, digit === '.' ? 'decimal sign' : digit);
  await tap(workshop, /^Enter/);
}

const answer = { ask: 'Exit clear', kind: 'confirm', answer: 'yes', at: '2026-05-12T08:00:00.000Z' };

/** The walk round of whoever holds the phone, in date, so that lists which require it begin at once. */
export const readies = (workshop: Workshop) =>
  workshop.does({
    do: 'finish-checklist',
    runId: workshop.shell.newId(),
    step: 'readiness',
    batchId: null,
    checklist: {
      id: 'spill-response-readiness',
      version: '1',
      hash: 'a'.repeat(64),
      title: 'Ready for a spill or fume',
    },
    outcome: 'cleared',
    startedAt: '2026-05-12T07:50:00.000Z',
    finishedAt: '2026-05-12T08:00:00.000Z',
    validUntil: '2026-05-12T20:00:00.000Z',
    answers: [{ item: 'rdy-out', ...answer }],
  });

export async function readied(): Promise<Workshop> {
  const workshop = await workshopInMemory();
  await readies(workshop);
  return workshop;
}

/** At the first question of a list for the batch. */
export async function opened(list: string): Promise<Workshop> {
  const workshop = await readied();
  workshop.path.value = ['check', workshop.batch, list];
  return workshop;
}

type Station = Extract<Parameters<Workshop['does']>[0], { do: 'add-station' }>['station'];

export const hood = {
  is: 'ducted-hood',
  width: { value: '80', unit: 'cm' },
  height: { value: '30', unit: 'cm' },
} as const satisfies Station;

/** @returns its id */
export async function station(workshop: Workshop, name: string, described: Station): Promise<string> {
  const { body } = await workshop.does({ do: 'add-station', name, station: described });
  if (body.kind !== 'station-described') throw new Error('no station was written down');
  return body.stationId;
}

/** The question of that id, in the words of the list as it came. */
export function itemOf(list: string, id: string): Item {
  const item = checklists.get(list)?.items.find((one) => one.id === id);
  if (!item) throw new Error(`no item ${id} in ${list}`);
  return item;
}

/** The question that stands on the screen; undefined where none does. */
const itemOn = (workshop: Workshop): Item | undefined =>
  [...workshopLists(workshop.state.value).values()]
    .flatMap(({ items }) => items)
    .find(({ ask }) => ask === heading());

/** Taps the answer that is in order; whoever is named is Tobias, at 23:15. */
export async function answerInOrder(workshop: Workshop): Promise<void> {
  const item = itemOn(workshop);
  if (!item) throw new Error(`"${heading()}" is no question`);
  if (item.kind === 'confirm') return tap(workshop, item.yes ?? 'Yes, I looked: it is so');
  if (item.kind === 'reading') return key(workshop, item.min ?? item.max ?? '1');
  const choice = item.choices.find(({ stops, asksReason }) => !stops && !asksReason);
  await tap(workshop, sentence(choice?.answer ?? ''));
  if (choice?.names) await tap(workshop, 'Tobias');
  if (choice?.names !== 'person-and-time') return;
  fireEvent.input(screen.getByLabelText('Hour'), { target: { value: '23:15' } });
  await tap(workshop, 'Keep');
}

/** Answers in order until `ask` stands on the screen, or nothing is asked any more. */
export async function answerUntil(workshop: Workshop, ask?: string): Promise<void> {
  while (heading() !== ask && itemOn(workshop)) await answerInOrder(workshop);
}

/** Taps an answer of that question that stops. */
export async function stopAt(workshop: Workshop, item: Item): Promise<string> {
  const stopping = item.kind === 'choice' ? item.choices.find(({ stops }) => stops) : undefined;
  const answer = sentence(stopping?.answer ?? 'No');
  await tap(workshop, answer);
  return answer;
}

/** The list that was finished last. */
export const finished = (workshop: Workshop) => [...workshop.state.value.checklists.values()].at(-1);

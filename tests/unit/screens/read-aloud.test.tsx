import { act, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { open, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { answerInOrder, goTo, heading, itemOf, opened, show } from './at-the-bench';

const speak = vi.fn();
const cancel = vi.fn();
const place = itemOf('filtration', 'sta-place');

class Said {
  lang = '';
  constructor(readonly text: string) {}
}

beforeEach(() => {
  vi.stubGlobal('speechSynthesis', { speak, cancel });
  vi.stubGlobal('SpeechSynthesisUtterance', Said);
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetAllMocks();
});

const said = (): readonly string[] => speak.mock.calls.map(([{ text }]) => text as string);

it('nothing is read aloud until somebody asks for it', async () => {
  show(await opened('filtration'));
  expect(said()).toEqual([]);
});

it('question, what to look at and answers are read aloud, and fall silent when the question goes', async () => {
  const workshop = await opened('filtration');
  await act(async () => workshop.shell.chooseAloud(true));
  show(workshop);
  expect(said()).toHaveLength(1);
  for (const part of [place.ask, place.look, 'outdoors']) expect(said()[0]).toContain(part);
  await answerInOrder(workshop);
  expect(cancel).toHaveBeenCalledTimes(1);
  expect(said()[1]).toContain(heading());
  await goTo(workshop, 'today');
  expect(cancel).toHaveBeenCalledTimes(2);
});

it('is switched on in the record, and cannot be where the phone has no voice', async () => {
  const workshop = await workshopInMemory();
  open(workshop.shell, 'record/reading');
  await user.click(screen.getByRole('radio', { name: /^Read aloud/ }));
  expect(workshop.shell.aloud.value).toBe(true);
  vi.stubGlobal('speechSynthesis', undefined);
  open(workshop.shell, 'record/reading');
  expect(screen.getByRole('radio', { name: /^Read aloud/ })).toHaveProperty('disabled', true);
  expect(screen.getByText(/no voice/)).toBeTruthy();
});

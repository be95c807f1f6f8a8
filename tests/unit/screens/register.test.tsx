import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { afterEach, expect, test, vi } from 'vitest';
import { registerData } from '../../../src/paperwork/register/gather-register';
import { registerText } from '../../../src/paperwork/register/register-data';
import { CheckFileScreen } from '../../../src/screens/register/check';
import { NewRegister } from '../../../src/screens/register/new';
import { ShellProvider } from '../../../src/screens/shell';
import { paperFonts } from '../../support/paper-fonts';
import { disposalState } from '../paperwork/disposal-state';

vi.mock('../../../src/paperwork/pdf/fonts', () => ({ loadFonts: async () => paperFonts }));

type Memory = Awaited<ReturnType<typeof disposalState>>;

const open = ({ shell }: Memory, Page: typeof NewRegister): void => {
  cleanup();
  render(
    <ShellProvider value={shell}>
      <Page />
    </ShellProvider>,
  );
};

const make = () => screen.getByRole('button', { name: /Make the register/ });
const type = (label: string, value: string) =>
  fireEvent.input(screen.getByLabelText(label), { target: { value } });
const long = [{}, { timeout: 20_000 }] as const;

const textOf = ({ state, now, shell }: Memory): string =>
  registerText(
    registerData(
      { firstDay: '2026-05-01', lastDay: '2026-05-31' },
      { state: state.value, now: now.value, zone: shell.zone, madeBy: null, sign: '.', demo: false },
    ),
  );

const choose = (text: string, name = 'register.json') =>
  userEvent.upload(
    screen.getByLabelText(/Choose (a|another) file/),
    new File([text], name, { type: 'application/json' }),
  );

afterEach(cleanup);

test('the register of this month is made at one tap more, and its days are in the record', async () => {
  const memory = await disposalState();
  open(memory, NewRegister);
  expect(make().textContent).toMatch(/1.Jan.2026 to 31.Mar.2026/);
  await userEvent.click(screen.getByRole('radio', { name: /This month/ }));
  await userEvent.click(make());
  await screen.findByText('The register is made', ...long);
  const [paper] = [...memory.state.value.papers.values()].map(({ body }) => body);
  expect(paper).toMatchObject({
    paper: 'register',
    period: { first: '2026-05-01', last: '2026-05-31' },
    containerIds: [],
    fileName: 'register-2026-05-01-to-2026-05-31.pdf',
  });
  expect(screen.getByRole('link', { name: /Save the data|JSON/ }).getAttribute('download')).toBe(
    'register-2026-05-01-to-2026-05-31.json',
  );
});

test('other days are asked for, and refused the wrong way round', async () => {
  const memory = await disposalState();
  open(memory, NewRegister);
  await userEvent.click(screen.getByRole('radio', { name: 'Other days' }));
  expect((make() as HTMLButtonElement).disabled).toBe(true);
  type('First day', '2026-05-13');
  type('Last day', '2026-05-12');
  expect(screen.getAllByText('The last day is before the first.').length).toBeGreaterThan(0);
  expect((make() as HTMLButtonElement).disabled).toBe(true);
  type('Last day', '2026-05-13');
  expect(make().textContent).toMatch(/13.May.2026/);
  expect((make() as HTMLButtonElement).disabled).toBe(false);
});

test('a file that is as it was made is called whole, and what that does not prove is said', async () => {
  const memory = await disposalState();
  open(memory, CheckFileScreen);
  await choose(textOf(memory));
  await screen.findByText('Whole', ...long);
  expect(screen.getByText(/14 entries listed/)).toBeDefined();
  expect(screen.getByText(/does not prove that what was written is true/)).toBeDefined();
});

test('an altered file names the entry; another file may be chosen after it', async () => {
  const memory = await disposalState();
  const before = memory.state.value.log.length;
  open(memory, CheckFileScreen);
  await choose(textOf(memory).replace('"cap":"vented"', '"cap":"open"'));
  await screen.findByText('Not whole', ...long);
  expect(screen.getByText(/Entry 9 \(C.07\).*altered/)).toBeDefined();
  await choose('not even JSON', 'notes.json');
  await screen.findByText('Not checked', ...long);
  await waitFor(() => expect(screen.queryByText('Not whole')).toBeNull());
  expect(memory.state.value.log).toHaveLength(before);
});

test('a phone without room for the file says so, and what to do', async () => {
  const memory = await disposalState();
  const shell = {
    ...memory.shell,
    checkFile: () => ({
      checked: Promise.reject(new RangeError('Array buffer allocation failed')),
      cancel: () => undefined,
    }),
  };
  vi.spyOn(console, 'warn').mockImplementation(() => undefined);
  open({ ...memory, shell }, CheckFileScreen);
  await choose('{}');
  expect((await screen.findByRole('alert')).textContent).toMatch(/not enough room.*computer/);
});

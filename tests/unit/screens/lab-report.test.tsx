import { screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { choose, fill, open, tap, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
// Fetched when it is first opened: here already, so that no test waits for it.
import '../../../src/screens/lab-report/lab-report';
import { logLiquid, openCan } from '../../support/waste-in-cans';

const plain = (text: string | null | undefined) =>
  (text ?? '').replaceAll('\u2011', '-').replaceAll(/\s/g, ' ');

async function withCan() {
  const memory = await workshopInMemory();
  const id = await openCan(memory);
  await logLiquid(memory, 'barren-liquor', { value: '4', unit: 'L' }, id);
  memory.pass(60_000);
  const show = (page: string) => open(memory.shell, page);
  const form = async () => {
    show(`containers/${id}/lab-report`);
    await screen.findByRole('heading', { level: 1, name: /what a laboratory found$/ });
  };
  const reports = () => memory.state.value.containers.get(id)?.reports.map(({ body }) => body) ?? [];
  return { ...memory, id, show, form, reports };
}

const lines = () => within(screen.getByRole('list', { name: 'Lines' }));
const texts = () =>
  lines()
    .getAllByRole('listitem')
    .map((item) => plain(item.textContent));

async function head(): Promise<void> {
  await fill('Laboratory', 'Weir Laboratory');
  await fill('Day of the sample', '2026-05-12');
}

describe('a report of a laboratory', () => {
  test('is written down line by line, in commas, with what was none found of', async () => {
    const p = await withCan();
    await p.form();
    await head();
    await fill('Number of the report', 'W 2217');
    await fill('pH', '0,4');
    await tap(/^The eight of the federal table/);
    await waitFor(() => expect(document.activeElement).toBe(screen.getByLabelText('Arsenic, level')));
    await fill('Arsenic, level', '0,05');
    await user.click(screen.getByRole('checkbox', { name: /^None found down to this/ }));
    await tap('Next line');
    await waitFor(() => expect(document.activeElement).toBe(screen.getByLabelText('Barium, level')));
    await tap(/^Silver/);
    await fill('Silver, level', '7.2');
    await choose('One more element', 'Cu');
    await choose('Copper, level, unit', 'g/L');
    await fill('Copper, level', '18');
    await tap('Keep the report');
    await waitFor(() => expect(p.reports()).toHaveLength(1));
    expect(p.reports()[0]).toMatchObject({
      laboratory: 'Weir Laboratory',
      document: 'W 2217',
      sampledOn: '2026-05-12',
      ph: { value: '0.4', unit: '1' },
      results: [
        { element: 'As', in: 'filtered', level: { value: '0.05', unit: 'mg/L' }, below: true },
        { element: 'Ag', in: 'filtered', level: { value: '7.2', unit: 'mg/L' } },
        { element: 'Cu', in: 'filtered', level: { value: '18', unit: 'g/L' } },
      ],
    });
    expect(p.path.value.join('/')).toBe(`containers/${p.id}`);
  });

  test('says at its field what is wrong, and opens the line that it stands in', async () => {
    const p = await withCan();
    await p.form();
    await fill('Day of the sample', '2026-08-01');
    await tap(/^The eight/);
    await fill('Arsenic, level', '0');
    await tap('Next line');
    await tap('Keep the report');
    expect(screen.getByText('Choose a day that has come.')).toBeTruthy();
    expect(screen.getByText(/tick “none found”/)).toBeTruthy();
    expect(screen.getByLabelText('Laboratory').getAttribute('aria-invalid')).toBe('true');
    expect(p.reports()).toEqual([]);
    await user.click(screen.getByRole('checkbox', { name: /^None found down to this/ }));
    await fill('Arsenic, level', '');
    await tap('Keep the report');
    expect(screen.getByText('Write a number here.')).toBeTruthy();
    expect(p.reports()).toEqual([]);
  });

  test('needs a level or a pH', async () => {
    const p = await withCan();
    await p.form();
    await head();
    await tap(/^The eight/);
    await tap('Keep the report');
    expect(await screen.findByText('Write down one level at least, or the pH.')).toBeTruthy();
    await fill('pH', '15');
    await tap('Keep the report');
    expect(screen.getByText('A pH lies between 0 and 14.')).toBeTruthy();
    await fill('pH', '1');
    await tap('Keep the report');
    await waitFor(() => expect(p.reports()[0]?.results).toEqual([]));
  });

  test('does not tell one thing twice, nor mistake a litre for a kilogram', async () => {
    const p = await withCan();
    await p.form();
    await choose('One more element', 'Pb');
    await fill('Lead, level', '3');
    await choose('Found in', 'total');
    expect((screen.getByLabelText('Lead, level') as HTMLInputElement).value).toBe('');
    await fill('Lead, level', '40');
    // Of the filtered liquid nothing is told yet, so it is offered again; then moved to what is told above.
    await choose('One more element', 'Pb');
    await fill('Lead, level', '3');
    await choose('Found in', 'total');
    await fill('Lead, level', '41');
    expect(screen.getByText('It stands above already.')).toBeTruthy();
    await tap('Take lead out');
    expect(texts()).toEqual(['Leadin the waste as it is40 mg/kg']);
  });

  test('survives a reload in the middle, with the line that was open', async () => {
    const p = await withCan();
    await p.form();
    await head();
    await choose('One more element', 'Ni');
    await fill('Nickel, level', '2');
    await p.form();
    expect(screen.getByText('You had begun this.')).toBeTruthy();
    expect((screen.getByLabelText('Nickel, level') as HTMLInputElement).value).toBe('2');
    expect((screen.getByLabelText('Laboratory') as HTMLInputElement).value).toBe('Weir Laboratory');
  });

  test('offers the test of California where nobody said which laws apply, or where its law was chosen', async () => {
    const p = await withCan();
    const offered = () =>
      [...(screen.getByLabelText('Next lines: found in') as HTMLSelectElement).options].map(
        ({ value }) => value,
      );
    await p.form();
    expect(offered()).toContain('wet');
    await p.does({
      do: 'state-local-rule',
      stated: { rule: 'laws', value: ['eu'] },
      saidBy: 'Alderney Desk',
      saidOn: '2026-05-01',
    });
    await p.form();
    expect(offered()).toEqual(['total', 'filtered', 'tclp']);
  });
});

describe('the page of a container', () => {
  async function reported() {
    const p = await withCan();
    await p.does({
      do: 'log-lab-report',
      containerId: p.id,
      laboratory: 'Weir Laboratory',
      document: 'W 2217',
      sampledOn: '2026-05-12',
      results: [
        { element: 'Ag', in: 'tclp', level: { value: '7.2', unit: 'mg/L' } },
        { element: 'Se', in: 'tclp', level: { value: '0.05', unit: 'mg/L' }, below: true },
      ],
    });
    return p;
  }

  test('shows the last report with its results, and leads to its entry', async () => {
    const p = await reported();
    p.show(`containers/${p.id}`);
    expect(screen.getByRole('heading', { name: 'What a laboratory found' })).toBeTruthy();
    const item = (name: string) => plain(screen.getByText(name).closest('li')?.textContent);
    expect(item('Silver')).toBe('Silverin the TCLP extract7.2 mg/L');
    expect(item('Selenium')).toBe('Seleniumin the TCLP extract, none found down to0.05 mg/L');
    expect(screen.queryByText('Of what was in it before')).toBeNull();
    const entry = screen.getByRole('link', { name: /^Weir Laboratory/ }).getAttribute('href') ?? '';
    p.show(entry);
    const said = [...document.querySelectorAll('dl div')].map((one) => plain(one.textContent));
    expect(said).toContain('Silver in the TCLP extract7.2 mg/L');
    expect(said).toContain('Selenium in the TCLP extract, none found down to0.05 mg/L');
    expect(said.join(' ')).not.toMatch(/tclp|Ag\b|true/);
    p.show(`${entry}/correct`);
    expect(screen.getByLabelText('Silver in the TCLP extract')).toBeTruthy();
  });

  test('says when it speaks of what was in it before', async () => {
    const p = await reported();
    p.pass(3 * 24 * 3_600_000);
    await logLiquid(p, 'wash-water', { value: '0.5', unit: 'L' }, p.id);
    p.show(`containers/${p.id}`);
    expect(screen.getByText('Of what was in it before')).toBeTruthy();
  });

  test('does not hide that the record comes to something else', async () => {
    const p = await withCan();
    const stream = p.state.value.containers.get(p.id)?.contents[0]?.streamId ?? '';
    await p.does({
      do: 'log-stream-test',
      streamId: stream,
      findings: [{ by: 'assay', metal: 'Cu', concentration: { value: '20', unit: 'g/L' } }],
      freeAcid: [],
    });
    await p.does({
      do: 'log-lab-report',
      containerId: p.id,
      laboratory: 'Weir Laboratory',
      sampledOn: '2026-05-12',
      results: [{ element: 'Cu', in: 'filtered', level: { value: '12', unit: 'g/L' } }],
    });
    p.show(`containers/${p.id}`);
    expect(screen.getByText(/laboratory and record disagree$/)).toBeTruthy();
    const copper = screen.getAllByText('Copper').map((one) => plain(one.closest('li')?.textContent));
    expect(copper.join(' ')).toMatch(/its wastes come to 19.0 to 21.0 g.L/);
  });
});

/** What a batch was charged with and gave back, and whether it closes. */
import { screen, waitFor } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/ledger/entries/findings';
import type { StreamKind } from '../../../src/safety/stream-kind';
import { choose, fill, open, row, tap } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';

async function workshop() {
  const memory = await workshopInMemory();
  const { batch, does, state } = memory;
  const gave = (stream: StreamKind, volume: string, copper: string) => {
    const findings: Finding[] = [{ by: 'assay', metal: 'Cu', concentration: { value: copper, unit: 'g/L' } }];
    return does({
      do: 'log-stream',
      batchId: batch,
      stepId: null,
      stream,
      liquid: { volume: { value: volume, unit: 'L' }, findings, freeAcid: [] },
    });
  };
  const of = () => state.value.batches.get(batch);
  return { ...memory, gave, of, form: `batches/${batch}/account`, page: `batches/${batch}` };
}

describe('writing down what was charged', () => {
  test('acid with its strength, then copper, without leaving the form', async () => {
    const { shell, form, of, drafts } = await workshop();
    open(shell, form);
    await fill('Volume', '0.33');
    await fill('Strength as charged', '68');
    await tap('Write it down');
    await waitFor(() => expect(of()?.charged).toHaveLength(1));
    expect(screen.getByText(/Written down/)).toBeTruthy();
    expect(screen.getByLabelText<HTMLInputElement>('Volume').value).toBe('');
    expect(drafts.size).toBe(0);
    await choose('What it was', 'charge copper');
    await fill('Mass', '120.0');
    await tap('Write it down');
    await waitFor(() => expect(of()?.charged).toHaveLength(2));
    expect(of()?.charged.map(({ body }) => body.charge)).toEqual([
      { what: 'acid', volume: { value: '0.33', unit: 'L' }, strength: { value: '68', unit: '%' } },
      { what: 'copper', mass: { value: '120.0', unit: 'g' } },
    ]);
  });

  test('what was got back, in its own words; nothing got back is 0', async () => {
    const { shell, form, of } = await workshop();
    open(shell, form);
    await choose('What it was', 'recovery silver');
    await fill('Mass', '44.1');
    await tap('Write it down');
    await waitFor(() => expect(of()?.recovered).toHaveLength(1));
    await choose('What it was', 'recovery copper');
    await fill('Mass', '0');
    await tap('Write it down');
    await waitFor(() => expect(of()?.recovered).toHaveLength(2));
    expect(of()?.recovered.map(({ body }) => body.recovery.what)).toEqual(['silver', 'copper']);
  });

  test('nothing is written while a line is missing, or the table does not know the strength', async () => {
    const { shell, form, of } = await workshop();
    open(shell, form);
    await fill('Volume', '0.33');
    await tap('Write it down');
    expect(screen.getByLabelText('Strength as charged').getAttribute('aria-invalid')).toBe('true');
    await fill('Strength as charged', '99');
    expect(screen.getByRole('alert').textContent).toContain('table of nitric acid');
    await tap('Write it down');
    expect(of()?.charged).toHaveLength(0);
  });

  test('a form that was left half filled is there again', async () => {
    const { shell, form } = await workshop();
    const { unmount } = open(shell, form);
    await choose('What it was', 'charge wash-water');
    await fill('Volume', '9.7');
    unmount();
    open(shell, form);
    expect(screen.getByLabelText<HTMLInputElement>('Volume').value).toBe('9.7');
    expect(screen.getByLabelText<HTMLSelectElement>('What it was').value).toBe('charge wash-water');
  });
});

describe('in against out', () => {
  async function cemented(barren: string) {
    const book = await workshop();
    const gram = (value: string) => ({ value, unit: 'g' }) as const;
    const { batch: batchId, does } = book;
    await book.gave('leach-liquor', '2.00', '1.00');
    await does({ do: 'log-charge', batchId, charge: { what: 'copper', mass: gram('120.0') } });
    await does({ do: 'log-recovery', batchId, recovery: { what: 'copper', mass: gram('90.0') } });
    await book.gave('barren-liquor', '2.00', barren);
    return book;
  }

  test('a batch without streams or charges shows no account', async () => {
    const { shell, page } = await workshop();
    open(shell, page);
    expect(screen.queryByRole('heading', { name: 'In against out' })).toBeNull();
    expect(row(/^Charged or got back/).getAttribute('href')).toContain('/account');
  });

  test('copper that closes says so; what nobody wrote down cannot be told', async () => {
    const { shell, page } = await cemented('16.0');
    open(shell, page);
    expect(row(/^Copper.*Closes within its uncertainty/)).toBeTruthy();
    expect(row(/Volume.*Cannot be told/)).toBeTruthy();
  });

  test('copper that is not found again is marked, with how much', async () => {
    const { shell, page, batch } = await cemented('8.0');
    const { unmount } = open(shell, page);
    expect(row(/Copper.*where is the rest/)).toBeTruthy();
    unmount();
    const account = open(shell, `batches/${batch}/closure/copper`);
    expect(row(/^Copper gone from the sheet/).textContent).toContain('30.0');
    const unaccounted = row(/^Unaccounted for/);
    expect(unaccounted.textContent).toContain('16.0');
    account.unmount();
    open(shell, (unaccounted.getAttribute('href') ?? '').replace('#/', ''));
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Copper, unaccounted for');
    expect(screen.getByText(/^32\.00 g − 16\.0/)).toBeTruthy();
  });

  test('the page of an open account names what nobody wrote down, and of which waste', async () => {
    const { shell, batch } = await cemented('16.0');
    open(shell, `batches/${batch}/closure/silver`);
    const notice = screen.getByText(/^Cannot be told: nobody wrote down/).textContent ?? '';
    expect(notice).toContain('the silver got back');
    expect(notice).toMatch(/a measurement of silver in barren liquor, B.01/);
    expect(screen.queryByText('Unaccounted for')).toBeNull();
  });
});

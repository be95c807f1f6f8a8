/** Several ways of knowing one thing: asked for, shown side by side, and held against each other. */
import { screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import type { AcidFinding, Finding } from '../../../src/ledger/entries/findings';
import { choose, fill, open, tap } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { openCan } from '../../support/waste-in-cans';

const options = (label: string) =>
  within(screen.getByLabelText(label))
    .getAllByRole('option')
    .map(({ textContent }) => textContent);

const photometer = (value: string): Finding => ({
  by: 'photometer',
  metal: 'Cu',
  concentration: { value, unit: 'g/L' },
});
const assay: Finding = { by: 'assay', metal: 'Cu', concentration: { value: '6.0', unit: 'g/L' } };

async function workshop() {
  const memory = await workshopInMemory();
  const log = async (findings: Finding[], freeAcid: AcidFinding[] = []): Promise<string> => {
    const { body } = await memory.does({
      do: 'log-stream',
      batchId: memory.batch,
      stepId: null,
      stream: 'barren-liquor',
      liquid: { volume: { value: '3.00', unit: 'L' }, findings, freeAcid },
    });
    return body.kind === 'stream-logged' ? body.streamId : '';
  };
  const form = `batches/${memory.batch}/log/barren-liquor`;
  const kept = () => [...memory.state.value.streams.values()].at(-1)?.body.liquid;
  return { ...memory, log, form, kept };
}

const more = 'Another way of knowing copper';

describe('logging a liquor', () => {
  test('another way is offered once the first is written, and both are kept', async () => {
    const { shell, form, kept } = await workshop();
    open(shell, form);
    await fill('Volume', '3.00');
    expect(screen.queryByRole('button', { name: more })).toBeNull();
    await fill('Copper', '6.4');
    await tap(more);
    await choose('Copper, way 2, how it is known', 'assay');
    await fill('Copper, way 2', '6.20');
    expect(screen.getByText(/^Used: laboratory assay, 5\.\d+ to 6\.\d+.g\/L$/)).toBeTruthy();
    await choose('Into which container', 'later');
    await tap('Keep this barren liquor');
    await waitFor(() => expect(kept()).toBeDefined());
    expect(kept()?.findings).toEqual([
      { by: 'photometer', metal: 'Cu', concentration: { value: '6.4', unit: 'g/L' } },
      { by: 'assay', metal: 'Cu', concentration: { value: '6.20', unit: 'g/L' } },
      { by: 'not-determined', metal: 'Ni' },
    ]);
  });

  test('two that disagree are said at once, and can be kept as they are', async () => {
    const { shell, form, kept } = await workshop();
    open(shell, form);
    await fill('Volume', '3.00');
    await fill('Copper', '6.4');
    await tap(more);
    await choose('Copper, way 2, how it is known', 'assay');
    await fill('Copper, way 2', '9.0');
    expect(screen.getByText(/disagree beyond their uncertainty/)).toBeTruthy();
    await fill('Copper, way 2', '6.4');
    expect(screen.queryByText(/disagree beyond their uncertainty/)).toBeNull();
    await fill('Copper, way 2', '9.0');
    await choose('Into which container', 'later');
    await tap('Keep this barren liquor');
    await waitFor(() => expect(kept()?.findings).toHaveLength(3));
  });

  test('a second way left empty is left out', async () => {
    const { shell, form, kept } = await workshop();
    open(shell, form);
    await fill('Volume', '3.00');
    await fill('Copper', '6.4');
    await tap(more);
    await choose('Into which container', 'later');
    await tap('Keep this barren liquor');
    await waitFor(() =>
      expect(kept()?.findings.map(({ by }) => by)).toEqual(['photometer', 'not-determined']),
    );
  });

  test('a strip takes the steps beside it, or none', async () => {
    const { shell, form, kept } = await workshop();
    open(shell, form);
    await fill('Volume', '3.00');
    await choose('Nickel, how it is known', 'strip');
    expect(screen.getByLabelText<HTMLSelectElement>('Nickel, unit').value).toBe('mg/L');
    await fill('Nickel', '100');
    await fill('Next step above', '50');
    expect(screen.getByText(/must lie between the two beside it/)).toBeTruthy();
    await fill('Next step above', '300');
    await choose('Into which container', 'later');
    await tap('Keep this barren liquor');
    await waitFor(() =>
      expect(kept()?.findings.at(0)).toEqual({
        by: 'strip',
        metal: 'Ni',
        concentration: { value: '100', unit: 'mg/L' },
        steps: { above: { value: '300', unit: 'mg/L' } },
      }),
    );
  });

  test('the volumes of a titration stand under the name of the acid, with how its strength is to be written', async () => {
    const { shell, form } = await workshop();
    open(shell, form);
    const sample = () => screen.getByLabelText('Sample taken');
    await choose('Free nitric acid, how it is known', 'titration-volumes');
    const name = screen.getAllByText('Free nitric acid').at(-1);
    expect((name?.compareDocumentPosition(sample()) ?? 0) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
    expect(name?.tagName).toBe('P');
    expect(screen.getByText(/0\.100, not 0\.1\./)).toBeTruthy();
  });

  test('what the batch tells already is filled in: acid, copper, feed, residue', async () => {
    const { shell, form, batch, does, kept } = await workshop();
    const gram = (value: string) => ({ value, unit: 'g' }) as const;
    await does({ do: 'log-charge', batchId: batch, charge: { what: 'copper', mass: gram('120.0') } });
    await does({ do: 'log-recovery', batchId: batch, recovery: { what: 'copper', mass: gram('97.5') } });
    await does({ do: 'log-recovery', batchId: batch, recovery: { what: 'residue', mass: gram('410') } });
    const acid = {
      what: 'acid',
      volume: { value: '0.33', unit: 'L' },
      strength: { value: '68', unit: '%' },
    } as const;
    await does({ do: 'log-charge', batchId: batch, charge: acid });
    open(shell, form);
    await fill('Volume', '3.00');
    await choose('Free nitric acid, how it is known', 'charged-minus-consumed');
    const typedIn = (label: string) => screen.getByLabelText<HTMLInputElement>(label).value;
    expect([typedIn('Acid charged'), typedIn('Strength as charged')]).toEqual(['0.33', '68']);
    await choose('Copper, how it is known', 'copper-weighed');
    expect([typedIn('Copper weighed in'), typedIn('Copper weighed out')]).toEqual(['120.0', '97.5']);
    await choose('Nickel, how it is known', 'feed-minus-residue');
    expect([typedIn('Feed that was leached'), typedIn('Residue, dried')]).toEqual(['500', '410']);
    await choose('Into which container', 'later');
    await tap('Keep this barren liquor');
    await waitFor(() => expect(kept()?.findings).toHaveLength(2));
    expect(kept()?.findings[1]).toEqual({
      by: 'feed-minus-residue',
      metal: 'Ni',
      capacitors: 'precious-metal-electrode',
      liquor: 'barren',
      feed: { value: '500', unit: 'g' },
      residue: { value: '410', unit: 'g' },
    });
  });

  test('the feed is asked of leach and barren liquor only, and only for metals it tells of', async () => {
    const { shell, form, batch } = await workshop();
    const { unmount } = open(shell, form);
    expect(options('Nickel, how it is known')).toContain('typical of the feed');
    await choose('Another metal', 'Ag');
    expect(options('Silver, how it is known')).not.toContain('typical of the feed');
    unmount();
    open(shell, `batches/${batch}/log/wash-water`);
    expect(options('Nickel, how it is known')).not.toContain('typical of the feed');
  });

  test('free acid is known in two ways too', async () => {
    const { shell, form, kept } = await workshop();
    open(shell, form);
    await fill('Volume', '3.00');
    await fill('Free nitric acid', '0.70');
    await tap('Another way of knowing free nitric acid');
    await choose('Free nitric acid, way 2, how it is known', 'ph');
    await fill('pH', '1');
    await choose('Into which container', 'later');
    await tap('Keep this barren liquor');
    await waitFor(() => expect(kept()?.freeAcid.map(({ by }) => by)).toEqual(['titration', 'ph']));
  });
});

describe('acid charged less consumed', () => {
  test('that was not enough for the metals is said while it is typed', async () => {
    const { shell, form } = await workshop();
    open(shell, form);
    await fill('Volume', '3.00');
    await choose('Free nitric acid, how it is known', 'charged-minus-consumed');
    await fill('Acid charged', '0.30');
    await choose('Strength as charged, unit', 'mol/L');
    await fill('Strength as charged', '2.0');
    // 3 L × 6 g/L of copper take 0.76 mol of the 0.6.
    await fill('Copper', '6.0');
    expect(screen.getByText(/took more acid than was charged/)).toBeTruthy();
    await fill('Copper', '4.9');
    expect(screen.getByText(/looks used up/)).toBeTruthy();
    await fill('Copper', '1.0');
    expect(screen.queryByText(/took more acid|looks used up/)).toBeNull();
  });
});

describe('the page of a waste', () => {
  test('shows every way of knowing, the one used first, each with its working', async () => {
    const { shell, log } = await workshop();
    const id = await log([photometer('6.4'), assay]);
    const { unmount } = open(shell, `streams/${id}`);
    const rows = screen.getAllByRole('link').map(({ textContent }) => textContent ?? '');
    const [used, other] = [
      rows.find((t) => t.startsWith('Laboratory')),
      rows.find((t) => t.startsWith('Photo')),
    ];
    expect(used).toContain('used');
    expect(other).toContain('not used');
    expect(screen.queryByText(/disagree/)).toBeNull();
    const href = screen.getByRole('link', { name: /^Photometer/ }).getAttribute('href') ?? '';
    unmount();
    open(shell, href.replace('#/', ''));
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Copper in all');
    expect(screen.getByText('6.4 g/L × 3.00 L')).toBeTruthy();
  });

  test('marks two that disagree, with what lies between them, and Today leads there', async () => {
    const { shell, log } = await workshop();
    const id = await log([photometer('9.0'), assay]);
    const { unmount } = open(shell, `streams/${id}`);
    expect(screen.getByText(/Two ways of knowing copper disagree/)).toBeTruthy();
    expect(screen.getByRole('link', { name: /^Between the two/ }).textContent).toContain('9.0');
    unmount();
    open(shell, 'today');
    const flag = screen.getByRole('link', { name: /two ways of knowing disagree/ });
    expect(flag.textContent).toContain('On copper.');
    expect(flag.getAttribute('href')).toBe(`#/streams/${id}`);
  });

  test('says that more acid was taken than charged, and by how much', async () => {
    const { shell, log } = await workshop();
    const id = await log(
      [{ by: 'weighing', metal: 'Cu', mass: { value: '100.0', unit: 'g' } }],
      [
        {
          by: 'charged-minus-consumed',
          volume: { value: '1.00', unit: 'L' },
          strength: { value: '2.00', unit: 'mol/L' },
        },
      ],
    );
    open(shell, `streams/${id}`);
    expect(screen.getByText(/took more acid than was charged/)).toBeTruthy();
    expect(screen.getByRole('link', { name: /beyond what was charged/ }).textContent).toContain('mol');
  });

  test('a container that holds it says so beside the metal', async () => {
    const { shell, log, does } = await workshop();
    const id = await log([photometer('9.0'), assay]);
    const containerId = await openCan({ does });
    await does({ do: 'place-stream', streamId: id, containerId, amount: { value: '3.00', unit: 'L' } });
    open(shell, `containers/${containerId}`);
    const link = screen.getByRole('link', { name: /two ways of knowing disagree/ });
    expect(link.getAttribute('href')).toBe(`#/streams/${id}`);
  });
});

test('a container names the way in which each is known, not the widest number in it; nitrate is worked out', async () => {
  const { shell, batch, does } = await workshopInMemory();
  const containerId = await openCan({ does });
  const volume = { value: '3.00', unit: 'L' } as const;
  await does({
    do: 'log-stream',
    batchId: batch,
    stepId: null,
    stream: 'barren-liquor',
    liquid: {
      volume,
      findings: [assay],
      freeAcid: [
        {
          by: 'titration-volumes',
          sample: { value: '5.0', unit: 'mL' },
          titrant: { value: '31.0', unit: 'mL' },
          titrantStrength: { value: '0.1', unit: 'mol/L' },
        },
      ],
    },
    placements: [{ containerId, amount: volume }],
  });
  open(shell, `containers/${containerId}`);
  const said = (name: RegExp) => screen.getByRole('link', { name }).closest('li')?.textContent;
  expect(said(/^Copper, in all/)).toContain('Copperlaboratory assay, ±');
  expect(said(/^Free nitric acid, in all/)).toContain('Free nitric acidtitration, from volumes, ±');
  expect(said(/^Nitrate, in all/)).toContain('Nitrateworked out, ±');
});

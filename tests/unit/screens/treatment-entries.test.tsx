import { screen, waitFor } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { contentsTitle } from '../../../src/screens/amounts';
import { entryTitle } from '../../../src/screens/record/entry-words';
import { correctable, keyOf, leavesOf } from '../../../src/screens/record/leaves';
import { inOrder, leafText, partText, worthSaying } from '../../../src/screens/record/part-words';
import { vesselDrawing } from '../../../src/screens/vessel-drawing';
import { open, user } from '../../support/hand';
import { workshopInMemory } from '../../support/shell-in-memory';
import { logLiquid, openCan } from '../../support/waste-in-cans';

/** A can of leach liquor with everything that can be told of a treatment. */
async function treated() {
  const memory = await workshopInMemory();
  const containerId = await openCan(memory, {
    code: 'C-07',
    vessel: 'tub',
    capacity: { value: '20', unit: 'L' },
    cap: 'open',
    openedOn: '2026-05-12',
  });
  await logLiquid(memory, 'leach-liquor', { value: '4.00', unit: 'L' }, containerId);
  const bench = await memory.does({
    do: 'log-bench-test',
    containerId,
    sampleVolume: { value: '100', unit: 'mL' },
    agent: 'hydrated-lime',
    mass: { value: '4.1', unit: 'g' },
    purity: { value: '92', unit: '%' },
    endPh: { value: '9.1', unit: '1' },
    instrument: 'meter',
    note: 'slow',
  });
  const begun = await memory.does({
    do: 'log-treatment-happened',
    containerId,
    stages: [{ agent: 'iron' }, { agent: 'limestone', targetPh: { value: '5', unit: '1' } }],
    targetPh: { value: '9.0', unit: '1' },
    clearance: null,
  });
  const treatmentId = begun.body.kind === 'treatment-begun' ? begun.body.treatmentId : '';
  const dose = await memory.does({
    do: 'log-dose',
    treatmentId,
    agent: 'limestone',
    mass: { value: '0.40', unit: 'kg' },
  });
  const read = await memory.does({
    do: 'log-pot-reading',
    treatmentId,
    ph: { value: { value: '4.8', unit: '1' }, instrument: 'paper' },
    temperature: { value: '41', unit: '°C' },
    colour: 'grey',
    findings: [{ by: 'strip', metal: 'Cu', concentration: { value: '25', unit: 'mg/L' } }],
  });
  const price = await memory.does({
    do: 'state-price',
    what: 'hydrated-lime',
    amount: { value: '0.45', unit: 'EUR' },
    saidBy: 'Builders’ yard',
  });
  const ended = await memory.does({ do: 'end-treatment', treatmentId, outcome: 'stopped', reason: 'foamed' });
  return { ...memory, containerId, treatmentId, entries: { bench, begun, dose, read, price, ended } };
}

const plain = (text: string): string => text.replaceAll('\u2009', ' ').replaceAll('\u2011', '-');

describe('entries of a treatment', () => {
  test('have a line each in the history', async () => {
    const { state, entries } = await treated();
    expect(Object.values(entries).map(({ body }) => plain(entryTitle(state.value, body, '.')))).toEqual([
      'Bench test, C-07: 4.1 g hydrated lime in 100 mL, pH 9.1',
      'Treatment of C-07: begun, to pH 9.0',
      '0.40 kg limestone into C-07',
      'C-07 read: pH 4.8, 41 °C, grey',
      'Price: hydrated lime, a kilogram, 0.45 EUR',
      'Treatment of C-07: stopped before the end',
    ]);
  });

  test('have a word for each part, and no bare identifier', async () => {
    const { state, entries } = await treated();
    const parts = (entry: keyof typeof entries) =>
      inOrder(leavesOf(entries[entry].body))
        .filter((leaf) => worthSaying(entries[entry].body, leaf))
        .map((leaf) =>
          plain(`${partText(entries[entry].body, leaf.path)}: ${leafText(state.value, leaf, '.')}`),
        );
    expect(parts('begun')).toEqual([
      'Container: C-07',
      'Stage: what goes in: Iron',
      'Stage: what goes in: Limestone',
      'Stage: limestone: target pH: 5',
      'Target pH: 9.0',
      'Local rule then: local rules not entered',
    ]);
    expect(parts('dose')).toEqual([
      'Treatment: treatment of C-07',
      'What goes in: Limestone',
      'Mass: 0.40 kg',
    ]);
    expect(parts('read')).toContain('Temperature: 41 °C');
    expect(parts('price')).toContain('What it was: hydrated lime, a kilogram');
    expect(parts('ended')).toContain('Outcome: stopped before the end');
    const all = (Object.keys(entries) as (keyof typeof entries)[]).flatMap(parts);
    expect(all.filter((text) => /\?|undefined|[0-9a-f]{8}-|[a-z]{2}[A-Z]{2}/.test(text))).toEqual([]);
  });

  test('can be corrected in every number and free text, in no choice', async () => {
    const { entries } = await treated();
    const fields = (entry: keyof typeof entries) => {
      const { body } = entries[entry];
      if (body.kind === 'entry-corrected' || body.kind === 'entry-withdrawn') return [];
      return correctable(body).map(({ path }) => keyOf(path));
    };
    expect(fields('bench').sort()).toEqual(['endPh', 'mass', 'note', 'purity', 'sampleVolume']);
    expect(fields('begun').sort()).toEqual(['stages.1.targetPh', 'targetPh']);
    expect(fields('dose')).toEqual(['mass']);
    expect(fields('read').sort()).toEqual(['colour', 'findings.0.concentration', 'ph.value', 'temperature']);
    expect(fields('price').sort()).toEqual(['amount', 'saidBy']);
    expect(fields('ended')).toEqual(['reason']);
  });

  test('are corrected by the form', async () => {
    const { shell, state, entries, treatmentId } = await treated();
    open(shell, `record/entry/${entries.read.id}/correct`);
    const temperature = screen.getByLabelText('Temperature');
    await user.clear(temperature);
    await user.type(temperature, '44');
    await user.type(screen.getByLabelText('Why it was wrong'), 'misread');
    await user.click(screen.getByRole('button', { name: 'Keep the correction' }));
    await waitFor(() =>
      expect(state.value.treatments.get(treatmentId)?.readings[0]?.body.temperature?.value).toBe('44'),
    );
  });
});

describe('a container under treatment', () => {
  test('is called treated slurry once something was added, and Today tells what runs and how it was begun', async () => {
    const { shell, state, containerId, entries, does } = await treated();
    expect(plain(contentsTitle(state.value, containerId))).toBe('Treated slurry B-01');
    await does({ do: 'withdraw-entry', withdraws: entries.ended.id, reason: 'it runs' });
    open(shell, 'today');
    const row = screen.getByText('C‑07: treatment running').closest('a, li');
    expect(row?.textContent).toMatch(/Last reading 12\sMay \d\d:00\./);
    expect(screen.getByText('C‑07: treated without clearance')).toBeTruthy();
    expect(screen.getByText('C‑07: treated, not allowed')).toBeTruthy();
  });

  test('has no colour worked out, even where copper and nickel were measured since', async () => {
    const { state, containerId, treatmentId, does } = await treated();
    const strip = (metal: 'Cu' | 'Ni') =>
      ({ by: 'strip', metal, concentration: { value: '5', unit: 'mg/L' } }) as const;
    await does({ do: 'log-pot-reading', treatmentId, findings: [strip('Cu'), strip('Ni')] });
    const container = state.value.containers.get(containerId);
    expect(container && vesselDrawing(state.value, container).tint).toBe('not-computed');
  });

  test('shows no load of before, and why there is no base', async () => {
    const { shell, containerId } = await treated();
    open(shell, `containers/${containerId}`);
    expect(screen.getByText(/What was dissolved before is not what is now/)).toBeTruthy();
    expect(screen.queryByText('Density')).toBeNull();
  });
});

/** The page of the licences shows what the build found. */

import { licences } from 'virtual:licences';
import { screen } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { follow, open } from '../../support/hand';
import { shellInMemory } from '../../support/shell-in-memory';

test('every package and the fonts stand there, each with its licence and its text', async () => {
  const { shell } = shellInMemory();
  open(shell, 'record/about');
  follow(shell, /^Licences/);
  await screen.findByText(/stands under the MIT licence/);
  expect(screen.getByText(`${licences.length} works of others are in this app`)).toBeTruthy();
  for (const { name, version, licence, text } of licences) {
    const summary = screen.getByText(`${name} ${version}, ${licence}`);
    expect(summary.closest('details')?.textContent).toContain(text);
  }
  expect(licences.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['preact', 'pdfkit', 'zod', 'DejaVu fonts']),
  );
});

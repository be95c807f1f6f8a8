import { screen } from '@testing-library/preact';
import { expect, it } from 'vitest';
import { open } from '../../support/hand';
import { readied } from './at-the-bench';

it('a clearance stands on Today with whom it is for, unless that is who holds the phone', async () => {
  const { shell, state } = await readied();
  const line = () => screen.getByText('Ready for a spill or fume').closest('li')?.textContent ?? '';
  open(shell, 'today');
  expect(line()).not.toMatch(/only/);
  const [holder, other = ''] = [...state.value.people.keys()];
  shell.choosePerson(other);
  open(shell, 'today');
  expect(line()).toContain(`for ${state.value.people.get(holder ?? '')?.body.name} only`);
});

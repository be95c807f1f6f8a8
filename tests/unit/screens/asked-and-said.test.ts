import { expect, it } from 'vitest';
import { askedAndSaid } from '../../../src/screens/checklist/words';

it('a question is followed by its answer, and a thing to look at by a colon first', () => {
  expect(askedAndSaid('What goes in?', 'Not sure')).toBe('What goes in? Not sure.');
  expect(askedAndSaid('Colour above the liquid', 'Brown')).toBe('Colour above the liquid: Brown.');
});

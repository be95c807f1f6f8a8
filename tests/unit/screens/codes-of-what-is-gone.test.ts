/** A code is told of a container that is long gone as well: of a long record it is no more than a row. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { FoundRow } from '../../../src/ledger/found-rows';
import { emptyState, type State } from '../../../src/ledger/state';
import { entrySays } from '../../../src/paperwork/disposal/entry-says';
import { codesOf } from '../../../src/screens/hand-overs/load';
import { entryTitle } from '../../../src/screens/record/entry-words';
import { leafText } from '../../../src/screens/record/part-words';
import { notAllHere } from '../../support/long-record';
import { id, tip } from '../ledger/scribe';

/** @param text that asks the state itself for a code, which has none of what is put away */
const askedOfState = (text: string): boolean => /containers\.get\([^()]*\)\?\.body\.code\b/.test(text);

/** Nobody waits for rows there, and an accident is with what stands here. */
const besides = ['screens/sos/card.tsx'];

test('no page and no paper asks for a code in another way', () => {
  const src = new URL('../../../src/', import.meta.url);
  const files = ['screens', 'paperwork'].flatMap((room) =>
    readdirSync(new URL(room, src), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => `${room}/${name}`),
  );
  expect(files.length).toBeGreaterThan(300);
  expect(files.filter((name) => askedOfState(readFileSync(new URL(name, src), 'utf8')))).toEqual(besides);
});

test('of one that is put away', () => {
  const over = '2019-03-02T08:00:00.000Z';
  const gone: FoundRow = {
    is: 'container',
    id: id('c0', 1),
    code: 'C-04',
    from: over,
    to: over,
    metals: [],
    words: [],
  };
  const state: State = {
    ...emptyState,
    earlier: notAllHere({ putAway: () => [gone] }),
  };
  expect(codesOf(state, [id('c0', 1), id('c0', 2)])).toBe('C\u201104, ?');
  expect(entrySays({ state, sign: '.' }, tip(1, null, '2'))).toContain('C\u201104');
  const leaf = { is: 'text', path: ['containerId'], value: id('c0', 1) } as const;
  expect(leafText(state, leaf, '.')).toBe('C\u201104');
  // No person has a use for the name that the app gave to a thing.
  const step = { is: 'text', path: ['stepId'], value: id('5e', 9) } as const;
  expect(leafText(state, step, '.')).toBe('One that is not at hand');
  expect(leafText(emptyState, step, '.')).toBe('One that is not here');
  const ended = { kind: 'step-ended', v: 1, stepId: id('5e', 9) } as const;
  expect(entryTitle(state, ended, '.')).toBe('A step that is not at hand: ended');
});

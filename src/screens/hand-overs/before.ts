/** What is wrong or doubtful before containers leave together: told, and never in the way. */

import { type Flag, flags } from '../../ledger/flags';
import { codeOfContainer } from '../../ledger/put-away';
import { apartAmong } from '../../ledger/readiness';
import type { State } from '../../ledger/state';
import { citedBehind, saidBy } from '../../safety/must-not-meet/words';
import { statusWords } from '../../safety/words';
import { unbroken } from '../../ui/figure-value';
import type { MarkKind } from '../../ui/marks';
import { markOf } from '../today/rows';
import { flagWords } from '../today/words';
import { thingInside, thingName } from '../words';
import { handOverWords as w } from './words';

export type Before = {
  readonly key: string;
  readonly mark: MarkKind;
  readonly title: string;
  readonly second: string;
  readonly href?: string;
};

function ofContainer(state: State, all: readonly Flag[], containerId: string): readonly Before[] {
  const container = state.containers.get(containerId);
  if (!container) return [];
  const code = unbroken(container.body.code);
  const href = `#/containers/${containerId}`;
  const flagged = all
    .filter(({ about, code: of }) => about.containerId === containerId && of !== 'load-came-back')
    .map((flag, i) => ({
      key: `${containerId}${flag.code}${i}`,
      mark: markOf(flag),
      ...flagWords(flag, code),
      href,
    }));
  const open: readonly Before[] =
    container.closedAt === null
      ? [
          {
            key: `${containerId}open`,
            mark: 'unknown',
            title: w.notClosed(code),
            second: w.notClosedSecond,
            href,
          },
        ]
      : [];
  return [...flagged, ...open];
}

function sourceOf(by: string): string {
  const cited = citedBehind(by);
  return cited ? w.apartSource(cited.source, statusWords[cited.status]) : '';
}

/** What meets if two of them break on the way. */
function together(state: State, chosen: readonly string[]): readonly Before[] {
  const codes = (ids: readonly string[]): string =>
    ids.map((id) => unbroken(codeOfContainer(state, id) ?? '?')).join(', ');
  return apartAmong(state, chosen).map(({ a, b, by, withA, withB }) => ({
    key: `${by} ${a} ${b}`,
    mark: 'stop' as const,
    title: w.apart(codes(withA), codes(withB)),
    second: w.apartSecond(thingName(a), thingInside(b), saidBy(by), sourceOf(by)),
  }));
}

export function beforeItLeaves(state: State, chosen: readonly string[]): readonly Before[] {
  const all = flags(state);
  return [...together(state, chosen), ...chosen.flatMap((id) => ofContainer(state, all, id))];
}

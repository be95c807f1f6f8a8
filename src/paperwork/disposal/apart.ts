/** Which containers of a load must be kept apart, should two of them break. Nothing found is no statement. */

import { contentsSide } from '../../ledger/meeting-sides';
import { codeOfContainer } from '../../ledger/put-away';
import { apartAmong } from '../../ledger/readiness';
import type { State } from '../../ledger/state';
import { type Meeting, meetings, refusedMeeting } from '../../safety/must-not-meet/meetings';
import { effectOf } from '../../safety/must-not-meet/words';
import type { StreamKind } from '../../safety/stream-kind';
import { capital, statusWords, streamWords, unbroken } from '../words';
import type { Apart } from './set-data';

const nameOf = (thing: string): string => streamWords[thing as StreamKind] ?? thing;

function told(state: State, withA: readonly string[], withB: readonly string[], meeting: Meeting): Apart {
  const codes = (ids: readonly string[]) =>
    ids.map((id) => unbroken(codeOfContainer(state, id) ?? id)).sort();
  const { source, status } = meeting.cited;
  return {
    one: codes(withA),
    other: codes(withB),
    oneIs: nameOf(meeting.a),
    otherIs: nameOf(meeting.b),
    happens: capital(effectOf(meeting)),
    source,
    status: statusWords[status] ?? status,
  };
}

const sortedOnce = (parts: readonly string[]): string[] => [...new Set(parts)].sort();

/** What is kept from the same containers for the same reason is told once. */
function merged(all: readonly Apart[]): Apart[] {
  const byReason = new Map<string, Apart>();
  for (const one of all) {
    const key = JSON.stringify([one.one, one.oneIs, one.happens, one.source]);
    const before = byReason.get(key);
    byReason.set(
      key,
      before
        ? {
            ...before,
            other: sortedOnce([...before.other, ...one.other]),
            otherIs: [...new Set([...before.otherIs.split(', '), one.otherIs])].join(', '),
          }
        : one,
    );
  }
  return [...byReason.values()];
}

export const apartTold = (state: State, containerIds: readonly string[]): Apart[] =>
  merged(apartPairs(state, containerIds));

const apartPairs = (state: State, containerIds: readonly string[]): Apart[] =>
  apartAmong(state, containerIds).flatMap(({ withA, withB }) => {
    const [a, b] = [withA[0], withB[0]];
    if (a === undefined || b === undefined) return [];
    const meeting = refusedMeeting(meetings(contentsSide(state, a), contentsSide(state, b)));
    return meeting ? [told(state, withA, withB, meeting)] : [];
  });

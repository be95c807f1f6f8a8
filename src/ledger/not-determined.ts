/** Contents that nobody knows: what to test, in which order, and whom to ask. */
import { type UnknownAsk, type UnknownTest, unknownContents } from '../reference/unknown-contents-tables';
import { isDoubted, unaccountedSince } from './container-life';
import type { ContainerMarked } from './entries/containers';
import type { State, Told } from './state';

/** Somebody to ask, with how to reach them where the workshop's description tells it. */
export type ToAsk = UnknownAsk & {
  readonly people: readonly { readonly name: string; readonly contact?: string | undefined }[];
};

export type NotDetermined = {
  readonly since: string | null;
  /** How the doubt came; null where something in it is in no log. */
  readonly doubt: Told<ContainerMarked> | null;
  readonly tests: readonly UnknownTest[];
  readonly ask: readonly ToAsk[];
};

function peopleOf(state: State, who: UnknownAsk['who']): ToAsk['people'] {
  const { authority, collector } = state.workshop?.body ?? {};
  switch (who) {
    case 'worked-here':
      return [...state.people.values()].map(({ body }) => ({ name: body.name, contact: body.phone }));
    case 'collector':
      return collector ? [collector] : [];
    case 'authority':
      return authority ? [authority] : [];
    case 'previous-owner':
      return [];
  }
}

/** What to test and whom to ask about what is in it; null when it is known. */
export function notDetermined(state: State, containerId: string): NotDetermined | null {
  const container = state.containers.get(containerId);
  if (!container || !isDoubted(state, container)) return null;
  const { doubtfulSince, marks } = container;
  const doubt = marks.findLast((told) => told.body.mark === 'contents-doubtful') ?? null;
  return {
    since: doubtfulSince ?? unaccountedSince(state, container),
    doubt: doubtfulSince === null ? null : doubt,
    tests: unknownContents.tests,
    ask: unknownContents.ask.map((ask) => ({ ...ask, people: peopleOf(state, ask.who) })),
  };
}

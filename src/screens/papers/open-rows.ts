/** What is missing or doubtful in a container's paper, in words, with the way to where it is mended. */
import type { ContainerFigures } from '../../ledger/container-figures';
import type { Flag } from '../../ledger/flags';
import type { ContainerState, State } from '../../ledger/state';
import { flagsBehind, type Untold, untoldIn } from '../../paperwork/disposal/open-points';
import { streamTitle } from '../amounts';
import { flagWords } from '../today/words';
import { paperWords as w } from './words';

export type OpenRow = {
  readonly key: string;
  readonly mark: 'wrong' | 'unknown';
  readonly title: string;
  readonly second: string | undefined;
  readonly href: string;
};

/** What does not tell is a waste, or the treatment that it went through. */
const entryOf = (state: State, id: string): string =>
  `#/record/entry/${(state.streams.get(id) ?? state.treatments.get(id))?.entryId ?? ''}`;

function placeOf(state: State, { about }: Flag, containerId: string): string {
  const batch = about.stepId === undefined ? undefined : state.steps.get(about.stepId)?.body.batchId;
  if (batch) return `#/batches/${batch}`;
  if (about.containerId === undefined && about.streamId !== undefined) return entryOf(state, about.streamId);
  if (about.containerId === undefined && about.entryId !== undefined)
    return `#/record/entry/${about.entryId}`;
  return `#/containers/${containerId}`;
}

const flagged = (state: State, container: ContainerState, flag: Flag): OpenRow => {
  const { title, second } = flagWords(flag, container.body.code);
  const unknown = flag.code === 'contents-doubtful';
  return {
    key: `${flag.code}${JSON.stringify(flag.about)}`,
    mark: unknown ? 'unknown' : 'wrong',
    title,
    second,
    href: placeOf(state, flag, container.body.containerId),
  };
};

const untold = (state: State, containerId: string, { what, partly, streamId }: Untold): OpenRow => ({
  key: `${what}${streamId ?? ''}`,
  mark: 'unknown',
  title: partly ? w.untoldPartly[what] : w.untold[what],
  second: streamId === undefined ? undefined : w.toldNotBy(streamTitle(state, streamId)),
  href: streamId === undefined ? `#/containers/${containerId}` : entryOf(state, streamId),
});

/** Of one container: what is wrong first, then what nobody told. */
export const openRows = (
  state: State,
  container: ContainerState,
  figures: ContainerFigures,
): readonly OpenRow[] => [
  ...flagsBehind(state, container.body.containerId).map((flag) => flagged(state, container, flag)),
  ...untoldIn(figures).map((one) => untold(state, container.body.containerId, one)),
];

/** Of the place: what every paper leaves open until it is entered. */
export function openRowsOfPlace({ workshop, rules }: State): readonly OpenRow[] {
  const told = workshop?.body;
  const missing: readonly (readonly [boolean, string, string, string])[] = [
    [told?.generatorNumber === undefined, 'generator', w.noGenerator, '#/record/workshop'],
    [told?.authority === undefined, 'authority', w.noAuthority, '#/record/workshop'],
    [told?.collector === undefined, 'collector', w.noCollector, '#/record/workshop'],
    [!rules.has('storage-days'), 'storage', w.noStorage, '#/record/rules/storage-days'],
    [!rules.has('treatment-allowed'), 'treatment', w.noTreatment, '#/record/rules/treatment-allowed'],
  ];
  return missing.flatMap(([open, key, title, href]) =>
    open ? [{ key, mark: 'unknown' as const, title, second: undefined, href }] : [],
  );
}

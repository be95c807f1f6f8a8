/** What is missing or doubtful of a container before it leaves, in words, with the way to where it is mended. */
import type { ContainerFigures } from '../../ledger/container-figures';
import type { Flag } from '../../ledger/flags';
import { type Gap, gapsOf, gapsOfPlace, type PlaceGap, tooFullBy, type Untold } from '../../ledger/readiness';
import type { ContainerState, State } from '../../ledger/state';
import { flagsBehind } from '../../paperwork/disposal/open-points';
import { type DecimalSign, formatNumber } from '../../quantities/format';
import type { MarkKind } from '../../ui/marks';
import { calendarDayText, dayText, streamTitle } from '../amounts';
import { substanceNames } from '../batches/evidence-words';
import { markOf, subjectOf } from '../today/rows';
import { flagWords } from '../today/words';
import { setWords as w } from './set-words';

export type CheckRow = {
  readonly key: string;
  readonly mark: MarkKind;
  readonly title: string;
  readonly second: string | undefined;
  readonly href: string;
};

export type Looking = {
  readonly state: State;
  readonly now: string;
  readonly zone: string;
  readonly sign: DecimalSign;
};

const entryHref = (entryId: string | undefined): string => `#/record/entry/${entryId ?? ''}`;

/** The page of a container on which a flag is mended; its own page for the others. */
const pageOf: Readonly<Partial<Record<Flag['code'], string>>> = {
  'over-capacity': '/level',
  'over-fill-limit': '/out',
  'tight-cap-on-gassing-waste': '/change',
  'contents-doubtful': '/what-it-is',
  'container-damaged': '/move-all',
  'level-disagrees': '/level/why',
  'answer-stale': '/candidates',
  'material-not-determined': '/change',
  'was-diluted': '/candidates',
};

/** Where it is mended: what Today opens, unless there is a page for just this. */
function mendedAt(state: State, flag: Flag): string {
  const page = pageOf[flag.code];
  const { containerId } = flag.about;
  return page === undefined || containerId === undefined
    ? subjectOf(state, flag).href
    : `#/containers/${containerId}${page}`;
}

function ofFlag({ state, sign }: Looking, flag: Flag): CheckRow {
  const said = flagWords(flag, subjectOf(state, flag).name, sign);
  const title =
    flag.code === 'over-fill-limit'
      ? w.tooFull(`${formatNumber(tooFullBy(flag), 1, sign)}\u202fL`)
      : said.title;
  return {
    key: `${flag.code}${JSON.stringify(flag.about)}`,
    mark: markOf(flag),
    title,
    second: said.second,
    href: mendedAt(state, flag),
  };
}

/** Asked of every waste of this trade; the other metals are named behind them. */
const first: ReadonlySet<string> = new Set(['Cu', 'Ni', 'Ag', 'acid']);

function substancesRow(state: State, containerId: string, untold: Untold): CheckRow[] {
  const { streamId, substances, partly } = untold;
  const asked = substances.filter((one) => first.has(one));
  const [named, others] =
    asked.length > 0 ? [asked, substances.filter((one) => !first.has(one))] : [substances, []];
  if (named.length === 0) return [];
  const atLeast = named.every((one) => partly.includes(one));
  const names = substanceNames(named);
  const stream = state.streams.get(streamId ?? '')?.body;
  const says = stream ? w.doesNotTell(streamTitle(state, stream.streamId)) : w.nothingTells;
  const nor = others.length === 0 ? [] : [w.nor(substanceNames(others))];
  return [
    {
      key: `substances${streamId}`,
      mark: 'unknown',
      title: atLeast ? w.onlyAtLeast(names) : w.notDetermined(names),
      second: `${[says, ...nor].join('. ')}.`,
      href: stream?.liquid
        ? `#/streams/${stream.streamId}/found-later`
        : stream
          ? `#/streams/${stream.streamId}`
          : `#/containers/${containerId}`,
    },
  ];
}

function looksRow(state: State, containerId: string, { streamId, looks, heldLiquor }: Untold): CheckRow[] {
  if (looks.length === 0 && !heldLiquor) return [];
  const stream = state.streams.get(streamId ?? '');
  return [
    {
      key: `looks${streamId}`,
      mark: 'unknown',
      title: w.looks(looks, heldLiquor),
      second: stream ? `${w.doesNotTell(streamTitle(state, stream.body.streamId))}.` : undefined,
      href: stream ? `${entryHref(stream.entryId)}/correct` : `#/containers/${containerId}`,
    },
  ];
}

const labelKey: Gap['code'] = 'label-not-made';

function ofGap({ state, now }: Looking, { body }: ContainerState, gap: Gap): readonly CheckRow[] {
  const { containerId } = body;
  const page = `#/containers/${containerId}`;
  const row = (mark: MarkKind, title: string, second: string, href: string): CheckRow[] => [
    { key: gap.code, mark, title, second, href },
  ];
  switch (gap.code) {
    case 'empty':
      return row('wrong', w.empty, w.emptySecond, `${page}/in`);
    case 'gone':
      return row('gone', w.gone, w.goneSecond(dayText(gap.since, now)), page);
    case 'held':
      return row('held', w.held, w.heldSecond(dayText(gap.since, now)), `${page}/mark/let-go`);
    case 'not-closed':
      return row('wrong', w.notClosed, w.notClosedSecond, `${page}/mark/closed`);
    case 'storage-over': {
      const by = w.storageOverSecond(calendarDayText(gap.day, now));
      return row('overdue', w.storageOver(gap.daysOver), by, `#/due/days/leave/${containerId}`);
    }
    case 'label-not-made':
      return gap.made === null
        ? row('wrong', w.noLabel, w.noLabelSecond, `${page}/label`)
        : row('wrong', w.oldLabel, w.oldLabelSecond(dayText(gap.made, now)), `${page}/label`);
    case 'unaccounted':
      return row('unknown', w.unaccounted, w.unaccountedSecond, `${page}/what-it-is`);
    case 'untold':
      return [...substancesRow(state, containerId, gap.untold), ...looksRow(state, containerId, gap.untold)];
  }
}

/** Of one container: what is wrong with itself, what is missing before it leaves, then what is flagged of how it came about. */
export function checkRows(
  looking: Looking,
  container: ContainerState,
  figures: ContainerFigures,
): readonly CheckRow[] {
  const { containerId } = container.body;
  const flags = flagsBehind(looking.state, containerId);
  const isOwn = ({ about }: Flag): boolean => about.containerId === containerId;
  const rows = (some: readonly Flag[]) => some.map((flag) => ofFlag(looking, flag));
  return [
    ...rows(flags.filter(isOwn)),
    ...gapsOf(looking.state, container, figures, looking).flatMap((gap) => ofGap(looking, container, gap)),
    ...rows(flags.filter((flag) => !isOwn(flag))),
  ];
}

/** A label is missing no longer where the set brings one. */
export const rowsLeft = (rows: readonly CheckRow[], { labels }: { readonly labels: boolean }) =>
  rows.filter(({ key }) => key !== labelKey || !labels);

const placeHref = (gap: PlaceGap): string =>
  ['laws', 'storage-days', 'treatment-allowed'].includes(gap) ? `#/record/rules/${gap}` : '#/record/workshop';

/** Of the place: what every paper leaves open until it is entered. */
export const placeRows = (state: State): readonly CheckRow[] =>
  gapsOfPlace(state).map((gap) => ({
    key: gap,
    mark: 'unknown',
    title: w.place(gap),
    second: undefined,
    href: placeHref(gap),
  }));

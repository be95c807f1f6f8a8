/** A walk on the screen: every container is written down as it is seen, and can be taken back for five seconds. */

import type { Found } from '../../ledger/entries/inspections';
import type { Intention } from '../../ledger/intention';
import { codeOfContainer } from '../../ledger/put-away';
import { finishedWalk, inspectedIntention } from '../../ledger/seen-on-walk';
import { looksOf, stillToSee, walkList } from '../../ledger/walks';
import type { Item } from '../../safety/checklist-item';
import { answeredAs, isQuick, isTooQuick, type RunFailure } from '../../safety/checklist-run';
import type { Given } from '../../safety/run-schema';
import { unbroken } from '../../ui/figure-value';
import { tick } from '../../ui/stay-awake';
import { useUndo } from '../checklist/use-undo';
import { useWriting } from '../fault';
import { useShell } from '../shell';
import { givenPhotos } from '../tried';
import type { WalkDraft } from './draft';
import { useKeptWalk } from './kept-walk';
import { walkWords as w } from './words';
import { wrongOn } from './wrong-on-walk';

type Undo = { readonly said: string; readonly take: () => void };

export type WalkOnScreen = ReturnType<typeof useWalk>;
export type Walking = ReturnType<typeof useWalking>;

/** What is written, kept and taken back of it. */
function useWalking(only: string | undefined) {
  const shell = useShell();
  const list = walkList(shell.state.value);
  const { draft, keep, drop } = useKeptWalk(only);
  const [undo, setUndo] = useUndo<Undo>();
  const { write: writeAt, fault, busy } = useWriting();
  const placeLooks = only === undefined ? looksOf(list, 'place') : [];
  const codeOf = (id: string): string => unbroken(codeOfContainer(shell.state.value, id) ?? '');

  /** @returns the id of the first entry; null with the fault shown */
  async function write(intention: Intention): Promise<string | null> {
    const written = await writeAt(intention, draft.madeAt ?? undefined);
    return written?.[0]?.id ?? null;
  }

  /** Puts the walk where it was. @param entry what was written meanwhile, and is withdrawn */
  function undoable(said: string, before: WalkDraft, entry?: string): void {
    const take = async (): Promise<void> => {
      setUndo(null);
      const taken =
        entry === undefined || (await write({ do: 'withdraw-entry', withdraws: entry, reason: w.takenBack }));
      if (taken) keep(before);
    };
    setUndo({ said: w.undo(said), take: () => void take() });
  }

  const answered = (item: Item, given: Given) =>
    answeredAs(
      { list, context: { person: shell.person.value ?? '', batchId: null } },
      item,
      given,
      draft.openedAt,
      shell.moment(),
    );

  const inspected = (containerId: string, found: readonly Found[], quick = false) =>
    inspectedIntention(list, {
      walkId: draft.walkId,
      containerId,
      found,
      startedAt: draft.madeAt ?? draft.openedAt,
      quick,
    });

  /** Writes the walk down; what was put right at once is closed with it. */
  async function finish(walk: WalkDraft): Promise<void> {
    const told = shell.state.value.walks.get(walk.walkId);
    const containerIds = told?.inspected.map(({ body }) => body.containerId) ?? [];
    const startedAt = walk.madeAt ?? walk.startedAt;
    const ended =
      told?.finished != null ||
      (await write(finishedWalk(list, { ...walk, startedAt, containerIds }))) !== null;
    if (!ended) return;
    for (const { findingId, done, photos } of walk.done) {
      const closed = shell.state.value.findings.get(findingId)?.closed;
      if (!closed && (await write({ do: 'close-finding', findingId, done, ...givenPhotos(photos) })) === null)
        return;
    }
    drop();
    shell.go(`walk/done/${walk.walkId}`, 'replace');
  }

  /** Writes the walk down when every look of the place has its answer. */
  function finishIfAll(walk: WalkDraft): void {
    if (only === undefined && walk.place.length === placeLooks.length) void finish(walk);
  }

  return {
    shell,
    only,
    list,
    draft,
    keep,
    placeLooks,
    codeOf,
    undo,
    setUndo,
    undoable,
    fault,
    busy,
    write,
    answered,
    inspected,
    finish: () => finish(draft),
    finishIfAll,
  };
}

/** @param only the one container that it is for; undefined for a whole walk */
export function useWalk(only?: string) {
  const walking = useWalking(only);
  const { shell, draft, keep, placeLooks, codeOf, undoable, write, inspected } = walking;
  const state = shell.state.value;
  const missed = draft.notSeen.map(({ containerId }) => containerId);
  const left = stillToSee(state, draft.walkId, missed);
  const toSee = only === undefined ? left : left.filter(({ body }) => body.containerId === only);
  const seen = state.walks.get(draft.walkId)?.inspected ?? [];
  const passed =
    only === undefined ? new Set(seen.map(({ body }) => body.containerId)).size + missed.length : 0;

  async function inOrder(containerId: string): Promise<void> {
    const quick = draft.madeAt === null && isQuick(draft.openedAt, shell.moment());
    const entry = await write(inspected(containerId, [], quick));
    if (entry === null) return;
    tick();
    keep({});
    undoable(codeOf(containerId), draft, entry);
  }

  function cannotSee(containerId: string, why: string): void {
    keep({ notSeen: [...draft.notSeen, { containerId, why }] });
    undoable(codeOf(containerId), draft);
  }

  function answerPlace(item: Item, given: Given, said: string): RunFailure | null {
    const result = walking.answered(item, given);
    if (!result.ok) return result.failure;
    tick();
    const answered = result.value;
    const wrong = { of: null, look: item.id, answered, found: [] };
    if (answered.verdict === 'stops') void wrongOn(walking).stopAt(wrong, answered);
    else if (answered.verdict === 'noted') keep({ wrong });
    else {
      const next = keep({ place: [...draft.place, answered] });
      undoable(said, draft);
      walking.finishIfAll(next);
    }
    return null;
  }

  return {
    ...walking,
    ...wrongOn(walking),
    /** The container that comes next; undefined when all are seen. */
    container: toSee[0],
    /** How far it is: containers passed, and all of them. */
    passed,
    of: passed + toSee.length,
    openLook: placeLooks.find(({ id }) => draft.place.every(({ item }) => item !== id)),
    tooQuick: isTooQuick(seen.map(({ body }) => body)),
    inOrder,
    cannotSee,
    answerPlace,
  };
}

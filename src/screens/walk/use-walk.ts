/** A walk on the screen: every container is written down as it is seen, and can be taken back for five seconds. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Found } from '../../ledger/entries/inspections';
import type { Photos } from '../../ledger/entries/photos';
import type { Intention } from '../../ledger/intention';
import { finishedWalk, foundOf, inspectedIntention } from '../../ledger/seen-on-walk';
import { lastWalk, looksOf, stillToSee, walkList, walkUnderWay, wasLeft } from '../../ledger/walks';
import type { Item } from '../../safety/checklist-item';
import { answeredAs, isQuick, isTooQuick, type RunFailure } from '../../safety/checklist-run';
import type { Answered, Given } from '../../safety/run-schema';
import { unbroken } from '../../ui/figure-value';
import { tick } from '../../ui/stay-awake';
import { performedWords } from '../fault';
import { type Shell, useShell } from '../shell';
import { freshWalk, type Stop, WalkDraft, type Wrong, walkDraft } from './draft';
import { walkWords as w } from './words';

const undoMs = 5_000;

type Undo = { readonly said: string; readonly take: () => void };

function useUndo() {
  const [undo, setUndo] = useState<Undo | null>(null);
  useEffect(() => {
    if (!undo) return;
    const timer = setTimeout(() => setUndo(null), undoMs);
    return () => clearTimeout(timer);
  }, [undo]);
  return [undo, setUndo] as const;
}

/** The draft that waits, or the walk that the entries tell of, or a new one. What was described and not written is kept. */
function openedWalk(shell: Shell, only: string | undefined): WalkDraft {
  const { draft, state, newId, moment } = shell;
  const now = moment();
  const kept = draft.read(walkDraft(only), WalkDraft);
  const ended = only === undefined && kept !== null && state.value.walks.get(kept.walkId)?.finished;
  const inHand = kept?.wrong || kept?.stop;
  if (kept && !ended && (inHand || !wasLeft(kept.openedAt, now))) return kept;
  // One that the last walk could not see belongs to that walk.
  const of = only === undefined ? walkUnderWay(state.value, now) : lastWalk(state.value);
  return freshWalk(of?.walkId ?? newId(), now);
}

export type WalkOnScreen = ReturnType<typeof useWalk>;

/** @param only the one container that it is for; undefined for a whole walk */
export function useWalk(only?: string) {
  const shell = useShell();
  const state = shell.state.value;
  const name = walkDraft(only);
  const list = walkList(state);
  const [draft, setDraft] = useState<WalkDraft>(() => openedWalk(shell, only));
  // What waits for an answer of the disk goes on from what is there then, not from what was drawn before.
  const latest = useRef(draft);
  const writing = useRef(false);
  const [undo, setUndo] = useUndo();
  const [fault, setFault] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  const passed = draft.notSeen.map(({ containerId }) => containerId);
  const left = stillToSee(state, draft.walkId, passed);
  const toSee = only === undefined ? left : left.filter(({ body }) => body.containerId === only);
  const seen = state.walks.get(draft.walkId)?.inspected ?? [];
  const seenIds = new Set(seen.map(({ body }) => body.containerId));
  const placeLooks = only === undefined ? looksOf(list, 'place') : [];
  const openLook = placeLooks.find(({ id }) => draft.place.every(({ item }) => item !== id));
  const codeOf = (id: string): string => unbroken(state.containers.get(id)?.body.code ?? '');
  const context = { person: shell.person.value ?? '', batchId: null };

  /** What comes up now is looked at from now on. */
  function keep(change: Partial<WalkDraft>): WalkDraft {
    const next = { ...latest.current, openedAt: shell.moment(), ...change };
    latest.current = next;
    shell.draft.keep(name, next);
    setDraft(next);
    return next;
  }

  /** @returns the id of the first entry; null with the fault shown */
  async function write(intention: Intention): Promise<string | null> {
    if (writing.current) return null;
    writing.current = true;
    setBusy(true);
    const done = await shell.perform(intention);
    writing.current = false;
    setBusy(false);
    setFault(performedWords(done));
    return done.ok ? (done.written[0]?.id ?? null) : null;
  }

  /** Takes an entry back, and puts the walk where it was before it. */
  const takeBack = (entry: string, before: WalkDraft) => (): void => {
    setUndo(null);
    void write({ do: 'withdraw-entry', withdraws: entry, reason: w.takenBack }).then((taken) => {
      if (taken !== null) keep({ ...before, openedAt: shell.moment() });
    });
  };

  const inspected = (containerId: string, found: readonly Found[], quick = false) =>
    inspectedIntention(list, { walkId: draft.walkId, containerId, found, startedAt: draft.openedAt, quick });

  async function inOrder(containerId: string): Promise<void> {
    const before = draft;
    const entry = await write(inspected(containerId, [], isQuick(draft.openedAt, shell.moment())));
    if (entry === null) return;
    tick();
    keep({ wrong: null });
    setUndo({ said: w.undoInOrder(codeOf(containerId)), take: takeBack(entry, before) });
  }

  function cannotSee(containerId: string, why: string): void {
    const before = draft;
    keep({ notSeen: [...draft.notSeen, { containerId, why }] });
    const take = (): void => {
      setUndo(null);
      keep({ ...before, openedAt: shell.moment() });
    };
    setUndo({ said: w.undoNotSeen(codeOf(containerId)), take });
  }

  /** Begins to tell what is wrong, or goes on with another look of it. */
  const tellWrong = (containerId: string): void =>
    void keep({ wrong: { of: containerId, look: null, answered: null, found: [] } });
  const chooseLook = (wrong: Wrong, look: string | null): void =>
    void keep({ wrong: { ...wrong, look, answered: null } });
  const leaveWrong = (): void => void keep({ wrong: null });

  /** What stops is written down with all that was found there, and what to do now stands on the screen in any case. */
  async function stopAt(container: Wrong, answered: Answered): Promise<void> {
    const findingId = shell.newId();
    const found = foundOf(answered, findingId);
    const stop: Stop = { of: container.of, findingId, answered, written: false };
    if (container.of === null) {
      const told = { place: [...draft.place, answered], found: [...draft.found, found] };
      keep({ ...told, wrong: null, stop: { ...stop, written: true } });
      return;
    }
    const before = { ...draft, wrong: { ...container, look: null, answered: null } };
    const wrong = { ...container, look: null, answered: null, found: [...container.found, found] };
    keep({ wrong, stop });
    await writeStop(wrong, stop, before);
  }

  async function writeStop(wrong: Wrong, stop: Stop, before?: WalkDraft): Promise<void> {
    if (wrong.of === null) return;
    const entry = await write(inspected(wrong.of, wrong.found));
    if (entry === null) return;
    keep({ wrong: null, stop: { ...stop, written: true } });
    if (before) setUndo({ said: w.undoFound(codeOf(wrong.of)), take: takeBack(entry, before) });
  }

  /** An answer to a look of the container in hand. */
  function answerWrong(wrong: Wrong, item: Item, given: Given): RunFailure | null {
    const result = answeredAs({ list, context }, item, given, draft.openedAt, shell.moment());
    if (!result.ok) return result.failure;
    tick();
    if (result.value.verdict === 'stops') void stopAt(wrong, result.value);
    else if (result.value.verdict === 'noted') keep({ wrong: { ...wrong, answered: result.value } });
    else chooseLook(wrong, null);
    return null;
  }

  function answerPlace(item: Item, given: Given, said: string): RunFailure | null {
    const before = draft;
    const result = answeredAs({ list, context }, item, given, draft.openedAt, shell.moment());
    if (!result.ok) return result.failure;
    tick();
    const answered = result.value;
    const wrong: Wrong = { of: null, look: item.id, answered, found: [] };
    if (answered.verdict === 'stops') void stopAt(wrong, answered);
    else if (answered.verdict === 'noted') keep({ wrong });
    else {
      const next = keep({ place: [...draft.place, answered] });
      const take = (): void => {
        setUndo(null);
        keep({ ...before, openedAt: shell.moment() });
      };
      setUndo({ said, take });
      if (next.place.length === placeLooks.length) void finish(next);
    }
    return null;
  }

  /** Keeps a finding with what was added to it. @param more the container is not done with */
  async function keepFound(wrong: Wrong, note: string, photos: Photos, more: boolean): Promise<boolean> {
    if (wrong.answered === null) return false;
    const one = foundOf(wrong.answered, shell.newId(), { note: note.trim(), photos });
    if (wrong.of === null) {
      const place = [...draft.place, wrong.answered];
      const next = keep({ place, found: [...draft.found, one], wrong: null });
      if (place.length === placeLooks.length) void finish(next);
      return true;
    }
    const found = [...wrong.found, one];
    if (more) {
      keep({ wrong: { ...wrong, look: null, answered: null, found } });
      return true;
    }
    const entry = await write(inspected(wrong.of, found));
    if (entry === null) return false;
    keep({ wrong: null });
    const before = { ...draft, wrong: { ...wrong, look: null, answered: null, found } };
    setUndo({ said: w.undoFound(codeOf(wrong.of)), take: takeBack(entry, before) });
    return true;
  }

  /** Writes what was found, when nothing more of it is to be told. */
  async function writeFound(wrong: Wrong): Promise<void> {
    if (wrong.of === null || wrong.found.length === 0) return;
    if ((await write(inspected(wrong.of, wrong.found))) !== null) keep({ wrong: null });
  }

  /** What was done about a stop. @returns why it could not be written; null when it was */
  async function sayDone(stop: Stop, done: string, photos: Photos): Promise<string | null> {
    const { findingId } = stop;
    if (stop.of === null) {
      goOn({ done: [...draft.done, { findingId, done, photos }] });
      return null;
    }
    const added = photos.length === 0 ? {} : { photos };
    const closed = await shell.perform({ do: 'close-finding', findingId, done, ...added });
    const why = performedWords(closed);
    if (why === null) goOn();
    return why;
  }

  /** Past a stop: the next container or look, or the end. */
  function goOn(change: Partial<WalkDraft> = {}): void {
    const next = keep({ ...change, stop: null });
    if (only === undefined && toSee.length === 0 && next.place.length === placeLooks.length)
      void finish(next);
  }

  /** Writes the walk down; what was put right at once is closed with it. */
  async function finish(walk: WalkDraft): Promise<void> {
    const told = shell.state.value.walks.get(walk.walkId);
    const containerIds = told?.inspected.map(({ body }) => body.containerId) ?? [];
    const ended = told?.finished ? true : await write(finishedWalk(list, { ...walk, containerIds }));
    if (!ended) return;
    for (const { findingId, done, photos } of walk.done) {
      const closed = shell.state.value.findings.get(findingId)?.closed;
      const added = photos.length === 0 ? {} : { photos };
      if (!closed && (await write({ do: 'close-finding', findingId, done, ...added })) === null) return;
    }
    shell.draft.drop(name);
    shell.go(`walk/done/${walk.walkId}`, 'replace');
  }

  return {
    only,
    list,
    draft,
    /** The container that comes next; undefined when all are seen. */
    container: toSee[0],
    /** How far it is: containers passed, and all of them. */
    passed: only === undefined ? seenIds.size + passed.length : 0,
    of: only === undefined ? seenIds.size + passed.length + toSee.length : 1,
    placeLooks,
    openLook,
    tooQuick: isTooQuick(seen.map(({ body }) => body)),
    undo,
    fault,
    busy,
    inOrder,
    cannotSee,
    tellWrong,
    chooseLook,
    leaveWrong,
    answerWrong,
    answerPlace,
    keepFound,
    writeFound,
    writeStop,
    sayDone,
    goOn: () => goOn(),
    finish: () => finish(draft),
    drop: () => shell.draft.drop(name),
  };
}

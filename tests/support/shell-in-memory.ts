/**
 * A shell for tests of screens: the real decisions and the real fold over entries in memory, a clock that stands still
 * until it is moved, drafts that outlive the screen. Render again for the same phone after a reload.
 */
import { type Signal, signal } from '@preact/signals';
import { decide } from '../../src/ledger/decide';
import type { Entry } from '../../src/ledger/entries/entry';
import { applyAll } from '../../src/ledger/fold';
import type { Intention } from '../../src/ledger/intention';
import { seal } from '../../src/ledger/seal';
import { emptyState, type State } from '../../src/ledger/state';
import { verifyChain } from '../../src/ledger/verify';
import type { DecimalSign } from '../../src/quantities/format';
import { prepareFile } from '../../src/screens/files/prepare-file';
import type { CheckRecord } from '../../src/screens/keeping/check-record';
import { runJob } from '../../src/screens/papers/jobs';
import { type Made, type MakePaper, madeOf } from '../../src/screens/papers/making';
import type { PhotoFault } from '../../src/screens/photos/prepare-picture';
import { type CheckFile, checkBytes } from '../../src/screens/register/check-file';
import type { FileKept, Performed, PhotoKept, Shell, Theme } from '../../src/screens/shell';
import type { StoreFailure } from '../../src/storage/failure';
import { photoHash } from '../../src/storage/photos';
import { keptType, pictureType } from '../../src/storage/picture-type';
import type { Unsound } from '../../src/storage/soundness';
import { wholeInMemory } from './whole-in-memory';

export type ShellInMemory = {
  readonly shell: Shell;
  readonly state: Signal<State>;
  readonly now: Signal<string>;
  readonly path: Signal<readonly string[]>;
  readonly person: Signal<string | null>;
  readonly station: Signal<string | null>;
  readonly drafts: Map<string, string>;
  /** Photos and papers by their hash; one whose bytes are changed is damaged. */
  readonly photos: Map<string, Uint8Array<ArrayBuffer>>;
  /** Lets time pass. */
  readonly pass: (ms: number) => void;
  /** Writes something down and gives its first entry; a refusal is a fault of the test. */
  readonly does: (intention: Intention) => Promise<Entry>;
  /** The disk fails from now on, or works again with null. */
  readonly breakStore: (failure: StoreFailure | null) => void;
};

/** Version 7 identifiers that count up, so that they sort in the order of writing. */
const counting = () => {
  let n = 0;
  return () => {
    n += 1;
    return `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
  };
};

const device = '0d000000-0000-7000-8000-000000000001';

/** The function that a worker runs, run here: there is no worker. */
const makeHere: MakePaper = (job, common, tell) => {
  let cancel = (): void => undefined;
  const cancelled = new Promise<Made>((resolve) => {
    cancel = () => resolve({ ok: false, failure: { code: 'cancelled' } });
  });
  return { made: Promise.race([cancelled, runJob(job, () => common, tell).then(madeOf)]), cancel };
};

const checkHere: CheckFile = (file) => ({
  checked: file
    .arrayBuffer()
    .then(async (bytes) => ({ ok: true, files: await checkBytes(file.name, new Uint8Array(bytes)) })),
  cancel: () => undefined,
});

/** By the chains alone: there is no disk. */
const checkOf =
  (log: () => readonly Entry[]): CheckRecord =>
  (_name, tell) => {
    const entries = log();
    tell?.({ done: entries.length, of: entries.length });
    const verdict = verifyChain(entries);
    const wrong: Unsound[] = verdict.whole
      ? []
      : [
          {
            what: 'entry',
            id: verdict.id,
            hash: null,
            device,
            counter: verdict.at + 1,
            why: verdict.why,
            later: false,
          },
        ];
    const heads = verdict.whole ? verdict.heads : [];
    const value = {
      entries: entries.length,
      photos: 0,
      heads,
      wrong,
      wrongCount: wrong.length,
      untold: { damaged: 0, later: 0, photo: 0 },
      photosElsewhere: 0,
    };
    return { checked: Promise.resolve({ ok: true, value }), cancel: () => undefined };
  };

export function shellInMemory(
  start = '2026-05-12T08:00:00.000Z',
  at: readonly string[] = ['today'],
): ShellInMemory {
  const state = signal<State>(emptyState);
  const now = signal(start);
  const path = signal(at);
  const person = signal<string | null>(null);
  const station = signal<string | null>(null);
  const sign = signal<DecimalSign>('.');
  const aloud = signal(false);
  const theme = signal<Theme>('light');
  const drafts = new Map<string, string>();
  const kept = new Map<string, unknown>();
  const photos = new Map<string, Uint8Array<ArrayBuffer>>();
  const newId = counting();
  let broken: StoreFailure | null = null;

  async function perform(intention: Intention, happenedAt?: string): Promise<Performed> {
    if (broken) return { ok: false, failure: broken };
    const decided = decide(state.value, intention, { now: now.value, newId, who: person.value });
    if (!decided.ok) return { ok: false, refusal: decided.refusal };
    const { log } = state.value;
    const written = [...log];
    for (const body of decided.bodies)
      written.push(
        seal({
          id: newId(),
          device,
          counter: written.length + 1,
          writtenAt: now.value,
          happenedAt: happenedAt ?? now.value,
          zone: 'Europe/Paris',
          who: person.value,
          previous: written.at(-1)?.hash ?? null,
          body,
        }),
      );
    state.value = applyAll(written);
    return { ok: true, written: written.slice(log.length) };
  }

  /** Keeps a picture as it is: there is no canvas here to make it smaller. */
  async function keepPhoto(picture: Blob): Promise<PhotoKept> {
    const bytes = new Uint8Array(await picture.arrayBuffer());
    const type = pictureType(bytes);
    const not = (fault: PhotoFault) => ({ ok: false, fault }) as const;
    if (type === null) return not({ code: 'not-a-picture' });
    if (broken) return not({ code: 'not-stored', failure: broken });
    const hash = photoHash(bytes);
    photos.set(hash, bytes);
    return { ok: true, photo: { hash, type, bytes: bytes.length } };
  }

  async function keepFile(file: File): Promise<FileKept> {
    const prepared = await prepareFile(file);
    if (!prepared.ok) return prepared;
    if (broken) return { ok: false, fault: { code: 'not-stored', failure: broken } };
    const hash = photoHash(prepared.bytes);
    photos.set(hash, prepared.bytes);
    return { ok: true, file: { hash, ...prepared.paper } };
  }

  const shell: Shell = {
    record: 'real',
    state,
    corrupted: signal([]),
    whole: wholeInMemory(() => state.value.log, device),
    readWhole: async () => ({ ok: true, value: null }),
    now,
    moment: () => now.value,
    zone: 'Europe/Paris',
    person,
    choosePerson: (id) => {
      person.value = id;
    },
    station,
    chooseStation: (id) => {
      station.value = id;
    },
    sign,
    chooseSign: (chosen) => {
      sign.value = chosen;
    },
    aloud,
    chooseAloud: (chosen) => {
      aloud.value = chosen;
    },
    theme,
    chooseTheme: (chosen) => {
      theme.value = chosen;
    },
    telling: signal('unavailable'),
    changeTelling: async () => undefined,
    online: signal(true),
    path,
    here: () => ({ read: (name) => kept.get(name), keep: (name, value) => void kept.set(name, value) }),
    go: (to) => {
      path.value = to.split('/').filter((part) => part !== '');
    },
    perform,
    keepPhoto,
    keepFile,
    photo: async (hash) => {
      const bytes = photos.get(hash);
      if (!bytes) return { state: 'missing' };
      const type = keptType(bytes);
      if (type === null || photoHash(bytes) !== hash) return { state: 'damaged' };
      return { state: 'there', picture: new Blob([bytes], { type }) };
    },
    makePaper: makeHere,
    checkFile: checkHere,
    checkRecord: checkOf(() => state.value.log),
    trouble: signal([]),
    marker: () => ({ state: 'none' }),
    goOn: async () => null,
    lastCheck: signal(null),
    appVersion: '0.1.0',
    backups: {
      work: () => {
        throw new Error('there is no worker here');
      },
      note: () => true,
      noteBroughtIn: () => true,
      noteWithout: () => true,
      since: async () => null,
      openAgain: () => undefined,
    },
    newId,
    draftsKept: signal(true),
    draft: {
      read: (form, schema) => {
        const text = drafts.get(form);
        const read = text === undefined ? undefined : schema.safeParse(JSON.parse(text));
        return read?.success ? (read.data as never) : null;
      },
      keep: (form, value) => void drafts.set(form, JSON.stringify(value)),
      drop: (form) => void drafts.delete(form),
      watch: () => () => undefined,
    },
    changedElsewhere: signal(null),
    updateWaiting: signal(false),
    takeUpdate: () => undefined,
    outdated: signal(false),
    loadAnew: () => undefined,
    demo: { enter: async () => undefined, leave: () => undefined, remove: async () => null },
  };

  return {
    shell,
    state,
    now,
    path,
    person,
    station,
    drafts,
    photos,
    pass: (ms) => {
      now.value = new Date(Date.parse(now.value) + ms).toISOString();
    },
    does: async (intention) => {
      const done = await perform(intention);
      if (!done.ok) throw new Error(JSON.stringify(done));
      const [first] = done.written;
      if (!first) throw new Error('nothing was written');
      return first;
    },
    breakStore: (failure) => {
      broken = failure;
    },
  };
}

/** A described workshop, two people of whom the first holds the phone, and one open batch. */
export async function workshopInMemory(start?: string, at?: readonly string[]) {
  const memory = shellInMemory(start, at);
  await memory.does({
    do: 'describe-workshop',
    name: 'Invented workshop',
    address: 'Weir Yard 6, Ostermill',
    mapReference: '4471 0926',
    emergencyNumber: '112',
    noSignal: 'Phone at Weir Yard 4.',
  });
  const add = async (name: string): Promise<string> => {
    const { body } = await memory.does({ do: 'add-person', name });
    return body.kind === 'person-added' ? body.personId : '';
  };
  const maren = await add('Maren');
  memory.person.value = maren;
  const tobias = await add('Tobias');
  const { body } = await memory.does({
    do: 'open-batch',
    feed: {
      capacitors: 'precious-metal-electrode',
      era: 'lead-free',
      mass: { value: '500', unit: 'g' },
    },
  });
  return { ...memory, maren, tobias, batch: body.kind === 'batch-opened' ? body.batchId : '' };
}

/** Puts the open record, the clock, the address and the preferences together into what a screen may see and do. */
import { computed, signal } from '@preact/signals';
import { v7 } from 'uuid';
import { prepareFile } from '../screens/files/prepare-file';
import { makeInWorker } from '../screens/papers/make-in-worker';
import { preparePicture } from '../screens/photos/prepare-picture';
import { checkInWorker } from '../screens/register/check-in-worker';
import type { FileKept, PhotoFound, PhotoKept, Shell } from '../screens/shell';
import { deleteRecord } from '../storage/database';
import { clearDraft, keepDraft, readDraft, watchDraft } from '../storage/drafts';
import type { StoreFailure } from '../storage/failure';
import { goOnWithout } from '../storage/go-on';
import { readMarker } from '../storage/marker';
import { backupsOf } from './backups';
import { checkBook } from './checking';
import { moment, now, zoneNow } from './clock';
import { layDemo } from './demo-workshop';
import { type Book, openBook } from './open-book';
import {
  aloud,
  chooseAloud,
  chooseSign,
  forget,
  openRecordName,
  personOf,
  remember,
  sign,
  stationOf,
  theme,
} from './preferences';
import { go, here, path } from './router';
import { changeTelling, telling } from './telling';
import { loadAnew, takeUpdate, updateWaiting } from './updates';

const online = signal(navigator.onLine);
for (const event of ['online', 'offline'] as const)
  window.addEventListener(event, () => {
    online.value = navigator.onLine;
  });

/** The person is one of the record's people who has not left, else nobody. */
function holderOf(book: Book) {
  const chosen = signal(personOf(book.name));
  const person = computed(() => {
    const held = chosen.value === null ? undefined : book.state.value.people.get(chosen.value);
    return held && held.leftAt === null ? chosen.value : null;
  });
  const choosePerson = (personId: string | null): void => {
    chosen.value = personId;
    if (personId === null) forget(`person:${book.name}`);
    else remember(`person:${book.name}`, personId);
  };
  return { person, choosePerson };
}

/** The station is one of the record's that is still used, else none. */
function placeOf(book: Book) {
  const chosen = signal(stationOf(book.name));
  const station = computed(() => {
    const held = chosen.value === null ? undefined : book.state.value.stations.get(chosen.value);
    return held && held.givenUpAt === null ? chosen.value : null;
  });
  const chooseStation = (stationId: string | null): void => {
    chosen.value = stationId;
    if (stationId === null) forget(`station:${book.name}`);
    else remember(`station:${book.name}`, stationId);
  };
  return { station, chooseStation };
}

/** Fills an empty demo record; the first of its people holds the phone, at its hood. */
async function layAndEnter(): Promise<void> {
  const opened = await openBook('demo');
  if (opened.ok) {
    if (opened.value.state.value.log.length === 0) {
      const { person, station } = await layDemo(opened.value.perform, moment());
      if (person !== null) remember('person:demo', person);
      if (station !== null) remember('station:demo', station);
    }
    opened.value.close();
  }
  openRecordName.value = 'demo';
  go('today', 'replace');
}

let entering: Promise<void> | undefined;

/** Once, however often it is asked for meanwhile: it would be laid out twice. */
export function enterDemo(): Promise<void> {
  entering ??= layAndEnter().finally(() => {
    entering = undefined;
  });
  return entering;
}

function leaveDemo(): void {
  openRecordName.value = 'real';
  go('', 'replace');
}

async function keepPhotoIn(book: Book, picture: Blob): Promise<PhotoKept> {
  const prepared = await preparePicture(picture);
  if (!prepared.ok) return prepared;
  const kept = await book.keepPhoto(prepared.bytes);
  if (!kept.ok) return { ok: false, fault: { code: 'not-stored', failure: kept.failure } };
  return { ok: true, photo: { hash: kept.value, bytes: prepared.bytes.length, ...prepared.picture } };
}

async function keepFileIn(book: Book, file: File): Promise<FileKept> {
  const prepared = await prepareFile(file);
  if (!prepared.ok) return prepared;
  const kept = await book.keepPhoto(prepared.bytes);
  if (!kept.ok) return { ok: false, fault: { code: 'not-stored', failure: kept.failure } };
  return { ok: true, file: { hash: kept.value, ...prepared.paper } };
}

async function photoOf(book: Book, hash: string): Promise<PhotoFound> {
  const read = await book.photo(hash);
  if (!read.ok) return { state: 'not-read', failure: read.failure };
  if (read.value.state !== 'there') return read.value;
  const { bytes, type } = read.value;
  return { state: 'there', picture: new Blob([bytes], { type }) };
}

/** Whether what was typed last could be kept. */
export const draftsKept = signal(true);

/** The page begins anew: every part of it knew the record as it was. */
async function goOnWith({ name, trouble }: Book): Promise<StoreFailure | null> {
  const gone = await goOnWithout(name, trouble.value, { newId: v7, now: moment() });
  if (!gone.ok) return gone.failure;
  go('', 'replace');
  window.location.reload();
  return null;
}

/** What the screens are given while `book` is open. */
export function shellOf(book: Book): Shell {
  const { person, choosePerson } = holderOf(book);
  const { station, chooseStation } = placeOf(book);
  return {
    record: book.name,
    state: book.state,
    corrupted: book.corrupted,
    whole: book.whole,
    readWhole: book.readWhole,
    now,
    moment,
    get zone() {
      return zoneNow();
    },
    person,
    choosePerson,
    station,
    chooseStation,
    sign,
    chooseSign,
    aloud,
    chooseAloud,
    theme,
    chooseTheme: (chosen) => {
      theme.value = chosen;
    },
    telling,
    changeTelling,
    online,
    path,
    here,
    go,
    perform: (intention, happenedAt) => book.perform(intention, person.value, happenedAt),
    keepPhoto: (picture) => keepPhotoIn(book, picture),
    photo: (hash) => photoOf(book, hash),
    keepFile: (file) => keepFileIn(book, file),
    makePaper: makeInWorker(book.name),
    checkFile: checkInWorker,
    trouble: book.trouble,
    marker: () => readMarker(book.name),
    goOn: () => goOnWith(book),
    checkRecord: (_name, tell) => checkBook(book, tell),
    lastCheck: book.lastCheck,
    appVersion: String(import.meta.env.VITE_VERSION),
    backups: backupsOf(book),
    newId: v7,
    draftsKept,
    draft: {
      read: (form, schema) => readDraft(book.name, form, schema),
      keep: (form, value) => {
        draftsKept.value = keepDraft(book.name, form, value).ok;
      },
      drop: (form) => clearDraft(book.name, form),
      watch: (form, heard) => watchDraft(book.name, form, heard),
    },
    changedElsewhere: signal(null),
    updateWaiting,
    takeUpdate,
    outdated: book.outdated,
    loadAnew,
    demo: {
      enter: enterDemo,
      leave: leaveDemo,
      remove: async () => {
        leaveDemo();
        if (book.name === 'demo') book.close();
        forget('person:demo');
        forget('station:demo');
        const removed = await deleteRecord('demo');
        return removed.ok ? null : removed.failure;
      },
    },
  };
}

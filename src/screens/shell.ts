/** What a screen may see and do. The app supplies it; a screen reads signals, shows components and calls commands. */
import type { ReadonlySignal, Signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type * as z from 'zod/mini';
import type { Entry } from '../ledger/entries/entry';
import type { FiledPaper } from '../ledger/entries/files';
import type { Photo } from '../ledger/entries/photos';
import type { Intention } from '../ledger/intention';
import type { Refusal } from '../ledger/refusal';
import type { State } from '../ledger/state';
import type { SinceBackup } from '../ledger/would-be-lost';
import type { DecimalSign } from '../quantities/format';
import type { RecordName } from '../storage/database';
import type { StoreFailure, StoreResult } from '../storage/failure';
import type { BackupNoted, MarkerRead, Without } from '../storage/marker';
import type { HowFar, WholeRecord } from '../storage/pages-of-entries';
import type { Corrupted } from '../storage/record';
import type { Soundness } from '../storage/soundness';
import type { Trouble } from '../storage/trouble';
import type { BackupWork } from './backup/in-worker';
import type { FileFault } from './files/prepare-file';
import type { CheckRecord } from './keeping/check-record';
import type { MakePaper } from './papers/making';
import type { PhotoFault } from './photos/prepare-picture';
import type { CheckFile } from './register/check-file';

/** What became of an intention: written, refused by the rules, or not stored. */
export type Performed =
  | { readonly ok: true; readonly written: readonly Entry[] }
  | { readonly ok: false; readonly refusal: Refusal }
  | { readonly ok: false; readonly failure: StoreFailure };

/** What became of a picture: a photo that entries may name from now on, or why it is none. */
export type PhotoKept =
  | { readonly ok: true; readonly photo: Photo }
  | { readonly ok: false; readonly fault: PhotoFault };

/** What became of a paper that came as a file. */
export type FileKept =
  | { readonly ok: true; readonly file: FiledPaper }
  | { readonly ok: false; readonly fault: FileFault };

/** A photo, or a paper that came as a file, looked for by its hash. A damaged one is never handed over. */
export type PhotoFound =
  | { readonly state: 'there'; readonly picture: Blob }
  | { readonly state: 'missing' }
  | { readonly state: 'damaged' }
  | { readonly state: 'not-read'; readonly failure: StoreFailure };

/** Values by name, of one page at its place in the history of this window. */
export type Here = {
  readonly read: (name: string) => unknown;
  readonly keep: (name: string, value: unknown) => void;
};

/** `phone`: as the phone is set, from one moment to the next. */
export type Theme = 'light' | 'dark' | 'phone';

/** Whether the phone shows a notice when a clock is due; refused in its settings, or not to be had in this browser. */
export type Telling = 'on' | 'off' | 'refused' | 'unavailable';

/**
 * @param tell hears how far the reading is; once all is read it is worked out, and the page stands still for a moment
 * @param signal stops it, unless somebody else waits for it as well
 */
export type ReadWhole = (tell?: (howFar: HowFar) => void, signal?: AbortSignal) => Promise<StoreResult<null>>;

export type ChangedElsewhere = { readonly there: 'typed' | 'dropped'; readonly takeOver: () => void };

export interface Shell {
  readonly record: RecordName;
  readonly state: ReadonlySignal<State>;
  readonly corrupted: ReadonlySignal<readonly Corrupted[]>;
  /** All of it as it lies on the disk: `state` may hold only what is recent or still matters. */
  readonly whole: WholeRecord;
  /** Has all of it in `state`, until the app is closed: a long record takes a while and much memory. */
  readonly readWhole: ReadWhole;
  /** UTC with milliseconds; moves on by itself while the page is in view. */
  readonly now: ReadonlySignal<string>;
  /** The moment of a tap, exact. */
  readonly moment: () => string;
  readonly zone: string;
  /** Who holds the phone; null until somebody says so. */
  readonly person: ReadonlySignal<string | null>;
  /** Null: nobody has said so yet. */
  readonly choosePerson: (personId: string | null) => void;
  /** Where the phone is: a station of the workshop; null until somebody says so. */
  readonly station: ReadonlySignal<string | null>;
  /** Null: at none that is written down. */
  readonly chooseStation: (stationId: string | null) => void;
  readonly sign: ReadonlySignal<DecimalSign>;
  readonly chooseSign: (sign: DecimalSign) => void;
  /** Questions are read aloud, where the phone can. */
  readonly aloud: ReadonlySignal<boolean>;
  readonly chooseAloud: (aloud: boolean) => void;
  readonly theme: ReadonlySignal<Theme>;
  readonly chooseTheme: (theme: Theme) => void;
  readonly telling: ReadonlySignal<Telling>;
  /** On to off and back; asks the phone when it has not been asked. */
  readonly changeTelling: () => Promise<void>;
  readonly online: ReadonlySignal<boolean>;
  /** Parts of the address after "#/", decoded. */
  readonly path: ReadonlySignal<readonly string[]>;
  /** What a page keeps for when the person comes back to it by the browser's own back or forward; ends with the window. */
  readonly here: () => Here;
  /** `replace` leaves no step to go back to. */
  readonly go: (path: string, how?: 'replace') => void;
  /** `happenedAt` when the person says that it was earlier. Resolves once it is on the disk. */
  readonly perform: (intention: Intention, happenedAt?: string) => Promise<Performed>;
  /** Makes a picture small, takes out of it what is not the picture, and keeps it. Resolves once it is on the disk. */
  readonly keepPhoto: (picture: Blob) => Promise<PhotoKept>;
  readonly photo: (hash: string) => Promise<PhotoFound>;
  /** Keeps a paper as it came. Resolves once it is on the disk; `photo` finds it again. */
  readonly keepFile: (file: File) => Promise<FileKept>;
  /** Makes a paper without keeping the page from being used. */
  readonly makePaper: MakePaper;
  /** Says whether a file is as it was made; keeps nothing of it. */
  readonly checkFile: CheckFile;
  /** What is wrong with the record as a whole: while anything is, nothing is written, and `perform` says so. */
  readonly trouble: ReadonlySignal<readonly Trouble[]>;
  /** What the marker beside the record tells at this moment. */
  readonly marker: () => MarkerRead;
  /** Goes on without what is missing or damaged, and opens the record again; a failure when it could not. */
  readonly goOn: () => Promise<StoreFailure | null>;
  /** Looks at everything on the disk, away from the page; what it finds wrong is in `trouble` from then on. */
  readonly checkRecord: CheckRecord;
  /** What the last such look since the start found; null when there was none yet. */
  readonly lastCheck: ReadonlySignal<Soundness | null>;
  /** Of this app, as the backups that it makes tell it. */
  readonly appVersion: string;
  readonly backups: {
    /** Begins a worker for one backup or one restore. */
    readonly work: () => BackupWork;
    /** Notes one that lies where it is kept; false where it could not be noted. */
    readonly note: (backup: BackupNoted) => boolean;
    /** Notes one that was brought in, where it tells more than what is noted; false where it could not be noted. */
    readonly noteBroughtIn: (backup: BackupNoted) => boolean;
    /** Notes what the record goes on without since one was brought in; false where it could not be noted. */
    readonly noteWithout: (without: readonly Without[]) => boolean;
    /** What lies on this phone and in no backup; null where nobody can say. */
    readonly since: () => Promise<SinceBackup | null>;
    /** Opens the record from its beginning, at the page `to`, or the first with ''. */
    readonly openAgain: (to: string) => void;
  };
  readonly newId: () => string;
  /** What was typed last is kept over a reload; false where the browser blocks the place, or it is full. */
  readonly draftsKept: ReadonlySignal<boolean>;
  readonly draft: {
    readonly read: <S extends z.ZodMiniType>(form: string, schema: S) => z.infer<S> | null;
    readonly keep: (form: string, value: unknown) => void;
    readonly drop: (form: string) => void;
    /** Hears what another window does with the draft of a form that is open here; returns what ends it. */
    readonly watch: (form: string, heard: (there: 'typed' | 'dropped') => void) => () => void;
  };
  /** The form that is open here was changed in another window; `takeOver` shows what stands there. Set by the form itself. */
  readonly changedElsewhere: Signal<ChangedElsewhere | null>;
  readonly updateWaiting: ReadonlySignal<boolean>;
  readonly takeUpdate: () => void;
  /** Something was changed in another window that this page cannot take up; nothing is written until it is loaded anew. */
  readonly outdated: ReadonlySignal<boolean>;
  /** At the same address, once nothing is being written; what was typed is kept. */
  readonly loadAnew: () => void;
  readonly demo: {
    /** Opens the invented workshop beside the real record. */
    readonly enter: () => Promise<void>;
    /** Back to the real record; the invented one stays. */
    readonly leave: () => void;
    /** Removes the invented one without a trace. */
    readonly remove: () => Promise<StoreFailure | null>;
  };
}

const Context = createContext<Shell | null>(null);
export const ShellProvider = Context.Provider;

export function useShell(): Shell {
  const shell = useContext(Context);
  if (!shell) throw new Error('a screen stands outside the shell');
  return shell;
}

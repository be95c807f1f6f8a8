/** What the browser says about keeping the record, for rows and pages. */
import { signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import type { State } from '../../ledger/state';
import { hearOfInstalling, type Installing, install, installing } from '../../storage/installing';
import {
  askToKeep,
  howKept,
  noteAsked,
  type Persistence,
  type RoomNow,
  roomNow,
  wasAsked,
} from '../../storage/persist';
import { keepingWords } from './words';

/** The first thing worth keeping is there: before that a browser's question would be about nothing. */
export const isWorthKeeping = ({ batches, containers }: State): boolean => batches.size + containers.size > 0;

export function useKeeping() {
  const [keeping, setKeeping] = useState<Persistence | 'unknown'>('unknown');
  const [asked, setAsked] = useState(wasAsked);
  useEffect(() => {
    void howKept().then(setKeeping);
  }, []);
  const ask = (): void => {
    void askToKeep().then((answer) => {
      noteAsked();
      setAsked(true);
      setKeeping(answer);
    });
  };
  return { keeping, asked, ask };
}

/** Null until it is known. */
export function useRoom(): RoomNow | null {
  const [known, setKnown] = useState<RoomNow | null>(null);
  useEffect(() => {
    void roomNow().then(setKnown);
  }, []);
  return known;
}

/** Somebody should make room now. */
export const isShort = ({ room }: RoomNow): boolean => room !== 'enough' && room !== 'not-told';

/** Said before a photo is taken, when room is short. */
export function useRoomWords(): string | undefined {
  const known = useRoom();
  if (!known || known.room === 'enough' || known.room === 'not-told') return undefined;
  return keepingWords.photoRoom[known.room](known.left);
}

const current = signal<Installing>('by-menu');

/** Call once, before anything is shown. */
export function watchInstalling(): void {
  const tell = (): void => {
    current.value = installing();
  };
  tell();
  hearOfInstalling(tell);
}

export const useInstalling = () => ({ installing: current.value, install: () => void install() });

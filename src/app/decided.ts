/**
 * What is wrong with a record is decided on in one window, or a backup brought in there. The others, which write nothing while
 * anything is wrong, go on by themselves: they are loaded anew, with what was typed.
 */
import { effect } from '@preact/signals';
import { onComingBack } from '../storage/coming-back';
import { markerKey } from '../storage/marker';
import { goneOnWithout } from '../storage/trouble';
import type { Book } from './open-book';
import { path } from './router';
import { opensAnyway } from './routes';
import { draftsKept } from './shell';

/** Calls `listen` when what the record goes on without is not what it was. */
function watchDecisions(name: Book['name'], listen: () => void): () => void {
  const known = JSON.stringify(goneOnWithout(name));
  const look = (): void => {
    if (JSON.stringify(goneOnWithout(name)) !== known) listen();
  };
  const heard = ({ key }: StorageEvent): void => {
    if (key === markerKey(name)) look();
  };
  window.addEventListener('storage', heard);
  const stop = onComingBack(look);
  return () => {
    window.removeEventListener('storage', heard);
    stop();
  };
}

/**
 * Not while somebody reads an emergency card or has a backup in hand there; where drafts are not kept the page says that it
 * must be loaded anew, and waits.
 * @returns ends it
 */
export function goOnWhenDecided(
  { name, trouble, outdated }: Pick<Book, 'name' | 'trouble' | 'outdated'>,
  loadAnew: () => void,
): () => void {
  const stopWatching = watchDecisions(name, () => {
    if (trouble.peek().length > 0) outdated.value = true;
  });
  const stop = effect(() => {
    if (!outdated.value || trouble.value.length === 0) return;
    if (draftsKept.value && !opensAnyway(path.value)) loadAnew();
  });
  return () => {
    stopWatching();
    stop();
  };
}

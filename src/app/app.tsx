/** The app: opens the record, and shows the screen of the address. */
import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { NewVersion } from '../screens/frame';
import { LockPage } from '../screens/lock/lock-page';
import { isHidden } from '../screens/lock/locking';
import { type Shell, ShellProvider } from '../screens/shell';
import { failureWords } from '../screens/words';
import type { StoreFailure } from '../storage/failure';
import { PlacesBar } from '../ui/bar';
import { Button } from '../ui/button';
import { idle } from '../ui/idle';
import { Page, Part } from '../ui/page';
import { badgeWhatIsDue } from './badge';
import { checkAfterStart } from './checking';
import { goOnWhenDecided } from './decided';
import { FaultBoundary } from './fault-boundary';
import { keepWhenWorthIt } from './keeping';
import { bookNotOpen, openBook } from './open-book';
import { makeOpeningAfterStart, readingThrough } from './opening';
import { openRecordName } from './preferences';
import { go, path } from './router';
import { loadEveryday, opensAnyway, screenAt } from './routes';
import { shellOf } from './shell';
import { tellWhenDue } from './telling';
import { loadAnew, takeUpdate, updateWaiting } from './updates';
import { appWords } from './words';

type Opened =
  | { readonly state: 'opening' }
  | { readonly state: 'open'; readonly shell: Shell }
  | { readonly state: 'shut' }
  | { readonly state: 'failed'; readonly failure: StoreFailure };

/** Opens the record that is wanted, and again when another one is, or when what stood in the way is gone. */
function useBook() {
  const opened = useSignal<Opened>({ state: 'opening' });
  const times = useSignal(0);
  useSignalEffect(() => {
    const name = openRecordName.value;
    void times.value;
    let close = (): void => {};
    let given = true;
    const openAgain = (): void => {
      if (given) times.value = times.peek() + 1;
    };
    void openBook(name, openAgain).then((result) => {
      if (!given) {
        if (result.ok) result.value.close();
        return;
      }
      if (!result.ok) {
        opened.value = { state: 'failed', failure: result.failure };
        return;
      }
      const book = result.value;
      const stop = book.shut.subscribe((shut) => {
        if (shut) opened.value = { state: 'shut' };
      });
      const stopTelling = tellWhenDue(book);
      const stopBadge = badgeWhatIsDue(book);
      const stopChecking = checkAfterStart(book);
      const stopKeeping = keepWhenWorthIt(book);
      const stopOpening = makeOpeningAfterStart(book);
      const stopDecided = goOnWhenDecided(book, loadAnew);
      close = () => {
        stop();
        stopTelling();
        stopBadge();
        stopChecking();
        stopKeeping();
        stopOpening();
        stopDecided();
        book.close();
      };
      opened.value = { state: 'open', shell: shellOf(book) };
    });
    return () => {
      given = false;
      close();
    };
  });
  return opened;
}

const Trouble = ({ words }: { readonly words: string }) => (
  <Page title={appWords.troubleTitle} bar={<PlacesBar />}>
    <NewVersion waiting={updateWaiting.value} take={takeUpdate} />
    <Part>
      <p role="alert">{words}</p>
      <Button look="primary" onTap={() => window.location.reload()}>
        {appWords.openAgain}
      </Button>
      <Button href="#/record/backup" second={appWords.takeOutSecond}>
        {appWords.takeOut}
      </Button>
    </Part>
  </Page>
);

const NotFound = () => (
  <Page title={appWords.notFoundTitle} bar={<PlacesBar />}>
    <NewVersion waiting={updateWaiting.value} take={takeUpdate} />
    <Part>
      <p>{appWords.notFound}</p>
      <Button look="primary" href="#/today">
        {appWords.toToday}
      </Button>
    </Part>
  </Page>
);

/**
 * Without a workshop every address but the emergency card and the record leads to the first page; where that is because the
 * record is gone or cannot be read, to the page that says so.
 */
function Place({ shell }: { readonly shell: Shell }) {
  const found = useComputed(() => {
    const [place] = path.value;
    const begun = shell.state.value.workshop !== null;
    const isNotWhole = !begun && shell.trouble.value.length > 0;
    if (isNotWhole && place !== 'sos' && place !== 'record') return screenAt(['record', 'not-whole']);
    if (!begun && place !== 'sos' && place !== 'record' && place !== 'start') return screenAt(['start']);
    return screenAt(path.value.length === 0 ? ['today'] : path.value);
  });
  useSignalEffect(() => {
    if (path.value.length === 0 && shell.state.value.workshop) go('today', 'replace');
  });
  // Where that fails the screen that needs it says so.
  useEffect(() => idle(() => void loadEveryday().catch(() => undefined)), []);
  if (isHidden(path.value)) return <LockPage />;
  if (!found.value) return <NotFound />;
  const { screen: Screen, at } = found.value;
  // A new address is a new screen: nothing of the one before may linger in its fields.
  return (
    <FaultBoundary key={path.value.join('/')}>
      <Screen at={at} />
    </FaultBoundary>
  );
}

/** A record that does not open keeps nobody from these. */
function NotOpen({ failure }: { readonly failure: StoreFailure }) {
  const shell = useMemo(() => shellOf(bookNotOpen(openRecordName.value, failure)), [failure]);
  if (!opensAnyway(path.value)) return <Trouble words={failureWords(failure)} />;
  return (
    <ShellProvider value={shell}>
      <Place shell={shell} />
    </ShellProvider>
  );
}

const shut: StoreFailure = { code: 'closed' };

/** A long record that has no opening is read through first: after an update, or when something old was changed. */
function Reading({ entries }: { readonly entries: number }) {
  if (opensAnyway(path.value)) return <NotOpen failure={shut} />;
  return (
    <Page title={appWords.readingTitle} bar={<PlacesBar />}>
      <Part>
        <p role="status">{appWords.reading(entries)}</p>
      </Part>
    </Page>
  );
}

/** @param meanwhile stands there until the record is open */
export function App({ meanwhile = null }: { readonly meanwhile?: ComponentChildren }) {
  const opened = useBook();
  const now = opened.value;
  if (now.state === 'opening' && readingThrough.value !== null)
    return <Reading entries={readingThrough.value} />;
  if (now.state === 'opening') return <>{meanwhile}</>;
  if (now.state === 'failed') return <NotOpen failure={now.failure} />;
  if (now.state === 'shut') return <NotOpen failure={shut} />;
  return (
    <ShellProvider value={now.shell}>
      <Place key={now.shell.record} shell={now.shell} />
    </ShellProvider>
  );
}

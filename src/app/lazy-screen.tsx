/** A screen whose code is fetched when it is first opened, so that the first visit does not grow by it. */
import { useEffect, useState } from 'preact/hooks';
import { Frame } from '../screens/frame';
import { Button, Buttons } from '../ui/button';
import { Part } from '../ui/page';
import type { Screen } from './routes';
import { takeUpdate, updateWaiting } from './updates';
import { appWords } from './words';

/**
 * The worker keeps all code, but a first visit may lose the network before it has it; and once another window has taken a
 * newer version, what this one has not loaded yet is gone. Not another import: a browser may remember that the first one failed.
 */
const NotHere = () => {
  const older = updateWaiting.value;
  return (
    <Frame title={older ? appWords.olderTitle : appWords.notHereTitle}>
      <Part>
        <p role="alert">{older ? appWords.older : appWords.notHere}</p>
        <Buttons>
          <Button look="primary" onTap={older ? takeUpdate : () => window.location.reload()}>
            {older ? appWords.openNewer : appWords.openAgain}
          </Button>
          <Button href="#/today">{appWords.toToday}</Button>
        </Buttons>
      </Part>
    </Frame>
  );
};

/**
 * @param load fetches the screen; asked once it is opened, and not again when it is there
 * @param already the screen, where it was fetched with others
 */
export function lazyScreen(
  load: () => Promise<Screen>,
  already: () => Screen | undefined = () => undefined,
): Screen {
  let loaded: Screen | undefined;
  return function LazyScreen({ at }) {
    loaded ??= already();
    const [state, setState] = useState<'coming' | 'here' | 'not-here'>(loaded ? 'here' : 'coming');
    useEffect(() => {
      if (loaded) return;
      let wanted = true;
      load().then(
        (screen) => {
          loaded = screen;
          if (wanted) setState('here');
        },
        (cause) => {
          console.warn('a screen is not on the phone yet', cause);
          if (wanted) setState('not-here');
        },
      );
      return () => {
        wanted = false;
      };
    }, []);
    if (state === 'not-here') return <NotHere />;
    const Loaded = loaded;
    return state === 'here' && Loaded ? <Loaded at={at} /> : <Frame title={appWords.opening} />;
  };
}

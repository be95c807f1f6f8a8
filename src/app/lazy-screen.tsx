/** A screen whose code is fetched when it is first opened, so that the first visit does not grow by it. */
import { useEffect, useState } from 'preact/hooks';
import { Frame } from '../screens/frame';
import { Button, Buttons } from '../ui/button';
import { Part } from '../ui/page';
import type { Screen } from './routes';
import { appWords } from './words';

/** Kept by the worker, but a first visit may have lost the network before it was. */
const NotHere = ({ again }: { readonly again: () => void }) => (
  <Frame title={appWords.notHereTitle}>
    <Part>
      <p role="alert">{appWords.notHere}</p>
      <Buttons>
        <Button look="primary" onTap={again}>
          {appWords.tryAgain}
        </Button>
        <Button href="#/today">{appWords.toToday}</Button>
      </Buttons>
    </Part>
  </Frame>
);

/** @param load fetches the screen; asked again by "Try again" when it could not be had */
export function lazyScreen(load: () => Promise<Screen>): Screen {
  let loaded: Screen | undefined;
  return function LazyScreen({ at }) {
    const [tries, setTries] = useState(0);
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
    }, [tries]);
    const again = (): void => {
      setState('coming');
      setTries(tries + 1);
    };
    if (state === 'not-here') return <NotHere again={again} />;
    const Loaded = loaded;
    return state === 'here' && Loaded ? <Loaded at={at} /> : <Frame title={appWords.opening} />;
  };
}

/**
 * What a first visit sees before the rest of the app is there: the first page, whole and usable. It is all that has to come
 * over the network until then, so it imports little; a test counts it.
 */
import { signal } from '@preact/signals';
import { type OuterProps, WelcomePage } from '../screens/start/welcome-page';
import { PlacesBar, TaskBar } from '../ui/bar';
import { Button } from '../ui/button';
import { Page, Part } from '../ui/page';
import { appWords } from './words';

const prefix = 'leesbook';

/** Nothing of this app is on the phone: no setting, no draft, no record. Where nothing can be known it is none. */
export async function isFirstVisit(): Promise<boolean> {
  try {
    if (Object.keys(localStorage).some((key) => key.startsWith(prefix))) return false;
    const databases = (await indexedDB.databases?.()) ?? [];
    return !databases.some(({ name }) => name?.startsWith(prefix));
  } catch {
    return false;
  }
}

/** Somebody wants to see the invented workshop; it is opened as soon as the app can. */
export const wantsToLook = signal(false);

/** As the frame of every page draws it, while nothing is known of a record. */
const Outer = ({ ways, ...page }: OuterProps) => (
  <Page
    {...page}
    top={{ clock: new Date().toTimeString().slice(0, 5), network: undefined }}
    bar={<TaskBar>{ways}</TaskBar>}
  />
);

const look = (): void => {
  wantsToLook.value = true;
};

export const FirstPage = () => <WelcomePage outer={Outer} laying={wantsToLook.value} look={look} />;

/** The rest of the app did not come. */
export const NotLoaded = () => (
  <Page title={appWords.notLoadedTitle} bar={<PlacesBar />}>
    <Part>
      <p role="alert">{appWords.notHere}</p>
      <Button look="primary" onTap={() => window.location.reload()}>
        {appWords.openAgain}
      </Button>
    </Part>
  </Page>
);

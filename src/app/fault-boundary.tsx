/** Stands where a screen met an error of our own: a page instead of an empty one, with every way out still there. */
import { Component, type ComponentChildren } from 'preact';
import { NewVersion } from '../screens/frame';
import { PlacesBar } from '../ui/bar';
import { Button } from '../ui/button';
import { Page, Part } from '../ui/page';
import { takeUpdate, updateWaiting } from './updates';
import { appWords } from './words';

type Met = { readonly name: string | null };

const nameOf = (error: unknown): string => (error instanceof Error ? error.name : appWords.faultUnnamed);

const FaultPage = ({ name }: { readonly name: string }) => (
  <Page title={appWords.faultTitle} bar={<PlacesBar />} second={name}>
    <NewVersion waiting={updateWaiting.value} take={takeUpdate} />
    <Part>
      <p role="alert">{appWords.fault}</p>
      <Button look="primary" href="#/today">
        {appWords.toToday}
      </Button>
      <Button onTap={() => window.location.reload()}>{appWords.openAgain}</Button>
    </Part>
  </Page>
);

/** Give it the address as its key: a new address is a new try. */
export class FaultBoundary extends Component<{ readonly children: ComponentChildren }, Met> {
  static override getDerivedStateFromError(error: unknown): Met {
    return { name: nameOf(error) };
  }

  override state: Met = { name: null };

  override componentDidCatch(error: unknown): void {
    // The browser's own console keeps the trace for whoever mends it.
    console.error(error);
  }

  override render() {
    return this.state.name === null ? this.props.children : <FaultPage name={this.state.name} />;
  }
}

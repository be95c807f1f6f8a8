/** Begins the app: everything that the first page of a first visit does without. */
import { effect } from '@preact/signals';
import { type ComponentChildren, render } from 'preact';
import { watchInstalling } from '../screens/keeping/use-keeping';
import { App } from './app';
import { startClock } from './clock';
import { wantsToLook } from './first-visit';
import { enterDemo } from './shell';
import { registerServiceWorker } from './updates';

/** @param meanwhile what stands there until the record is open */
export function begin(place: HTMLElement, meanwhile: ComponentChildren): void {
  startClock();
  watchInstalling();
  render(<App meanwhile={meanwhile} />, place);
  effect(() => {
    if (!wantsToLook.value) return;
    wantsToLook.value = false;
    void enterDemo();
  });
  void registerServiceWorker();
}

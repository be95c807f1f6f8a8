/** Asks who holds the phone, once, before anything that a person answers for. */
import type { ComponentChildren } from 'preact';
import { useShell } from '../shell';
import { WhoHolds } from '../who-holds';
import { words } from './words';

export const PersonFirst = ({ children }: { readonly children: ComponentChildren }): ComponentChildren =>
  useShell().person.value === null ? <WhoHolds second={words.personSecond} href="#/today" /> : children;

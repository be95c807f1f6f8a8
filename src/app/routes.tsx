/** Which screen stands at which address. The first pattern that fits wins; ":" takes any part and hands it over. */
import type { ComponentType } from 'preact';
import { Clearance } from '../screens/checklist/clearance';
import { RunList } from '../screens/checklist/run-list';
import { StepChoice } from '../screens/checklist/step-choice';
import { Sos } from '../screens/sos/sos';

/** A screen is given the parts of the address that its pattern named. */
export type Screen = ComponentType<{ readonly at: Readonly<Record<string, string>> }>;

const routes: readonly (readonly [pattern: string, screen: Screen])[] = [
  ['batches/:batch/step', StepChoice],
  ['check/:batch/:list', RunList],
  ['clearance/:entry', Clearance],
  ['sos', Sos],
  ['sos/:card', Sos],
];

function match(pattern: string, path: readonly string[]): Record<string, string> | null {
  const parts = pattern.split('/');
  if (parts.length !== path.length) return null;
  const found: Record<string, string> = {};
  for (const [i, part] of parts.entries()) {
    const given = path[i] ?? '';
    if (part.startsWith(':')) found[part.slice(1)] = given;
    else if (part !== given) return null;
  }
  return found;
}

/** The screen at an address with the parts it named; null where there is none. */
export function screenAt(path: readonly string[]): { screen: Screen; at: Record<string, string> } | null {
  for (const [pattern, screen] of routes) {
    const at = match(pattern, path);
    if (at) return { screen, at };
  }
  return null;
}

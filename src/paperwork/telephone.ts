/** The telephone of somebody who knows the waste, as papers and labels name it. */
import type { State } from '../ledger/state';
import { notDetermined } from './words';

type By = { readonly state: State; readonly madeBy: string | null };

export type Telephone = { readonly name: string; readonly phone: string };

/** Of whoever made it, else of the first who works here and has one; null where nobody has. */
export function whoKnows({ state, madeBy }: By): Telephone | null {
  const here = [...state.people.values()].filter(({ leftAt }) => leftAt === null);
  const maker = here.find(({ body }) => body.name === madeBy && body.phone !== undefined);
  const { name = '', phone } = (maker ?? here.find(({ body }) => body.phone !== undefined))?.body ?? {};
  return phone === undefined ? null : { name, phone };
}

/** As one text. @example telephoneOf({ state, madeBy: 'Joost' }) // '01632 960 134 (Joost)' */
export function telephoneOf(by: By): string {
  const told = whoKnows(by);
  return told === null ? notDetermined : `${told.phone} (${told.name})`;
}

/** A person as a form holds one. */
import * as z from 'zod/mini';
import type { IntentionOf } from '../../ledger/intention';
import { given } from '../tried';
import { words } from '../words';

export const PersonFields = z.object({ name: z.string(), phone: z.string() });
export type PersonFields = z.infer<typeof PersonFields>;

/** A name must be there for the one person that is needed, and for whoever has a phone. */
export const personFault = ({ name, phone }: PersonFields, needed: boolean): string | null =>
  name.trim() === '' && (needed || phone.trim() !== '') ? words.text.missing : null;

/** Null for an empty line. */
export const personAdded = ({ name, phone }: PersonFields): IntentionOf<'add-person'> | null =>
  name.trim() === '' ? null : { do: 'add-person', name, ...given('phone', phone) };

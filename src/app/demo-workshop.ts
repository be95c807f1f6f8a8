/** The invented workshop that a person can try things in. */
import type { Book } from './open-book';

/** Writes the invented scenario into an empty record. @returns the person who holds the phone in it */
export async function layDemo(perform: Book['perform'], now: string): Promise<string | null> {
  const written = await perform({ do: 'add-person', name: 'Invented person' }, null, now);
  const body = written.ok ? written.written[0]?.body : undefined;
  return body?.kind === 'person-added' ? body.personId : null;
}

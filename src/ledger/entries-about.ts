/** The lines of the history that are about one container, what corrected or withdrew them among them. */
import { referencesOf } from './references';
import { namedBy } from './standing';
import type { HistoryLine, State } from './state';

/** In the order of the record. */
export function entriesAbout(state: State, containerId: string): readonly HistoryLine[] {
  const ids = new Set<string>();
  return state.history.filter(({ entry }) => {
    const { body, id } = entry;
    const named = namedBy(entry);
    const closes = body.kind === 'finding-closed' ? state.findings.get(body.findingId) : undefined;
    const about =
      (body.kind === 'container-opened' && body.containerId === containerId) ||
      referencesOf(body).some((reference) => reference.to === 'container' && reference.id === containerId) ||
      closes?.containerId === containerId ||
      (named !== null && ids.has(named));
    if (about) ids.add(id);
    return about;
  });
}

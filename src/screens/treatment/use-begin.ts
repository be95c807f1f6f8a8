/** From the plan to the beginning of its treatment, with what is chosen. */
import type { Form } from '../form';
import { useShell } from '../shell';
import type { TreatmentDraft } from './draft';
import { aimText } from './pot-plot';
import type { Proposed } from './target';

/** Takes the pH that is proposed as chosen where none was typed, so that nobody types it again. */
export function useBegin(
  containerId: string,
  form: Form<TreatmentDraft>,
  proposed: Proposed | undefined,
): () => void {
  const { go, sign } = useShell();
  return () => {
    const { target } = form.latest();
    const typed = target.typed.trim() === '' && proposed ? aimText(proposed.pH, sign.value) : target.typed;
    form.change({ target: { ...target, typed } });
    go(`treatment/begin/${containerId}`);
  };
}

/** The treatment of a container before anything goes in: look, choose, and what comes of it. It writes nothing. */
import { useMemo } from 'preact/hooks';
import { bases } from '../../reference/tables';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { TreatmentRule } from '../containers/base-rows';
import { containerWords } from '../containers/words';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { BaseChoice } from './base-choice';
import { chosenOf } from './choice';
import { ComesOf, Minded, Needed } from './comes-of';
import { Doors } from './doors';
import { emptyTreatment, readPh, TreatmentDraft, treatmentDraftName } from './draft';
import { LocalPh } from './local-ph';
import { PotFigure } from './pot-figure';
import { proposal, targetOf } from './target';
import { useBegin } from './use-begin';
import { useLater, useSettled } from './use-worked-out';
import { type Pot, withPot } from './with-pot';
import { treatmentWords as w } from './words';

/** What stands there once the pH that is proposed is known. */
function useChosen({ id }: Pot, { base, target, reference }: TreatmentDraft) {
  const { state } = useShell();
  const now = state.value;
  const of = useMemo(() => ({ now, id, reference }), [now, id, reference]);
  const proposed = useLater(() => proposal(now, id, reference), of);
  const typed = useSettled(target.typed);
  const aimed = useMemo(
    () => proposed && { base, target: targetOf(readPh({ typed, unit: '1' }), proposed), reference, now, id },
    [proposed, base, typed, reference, now, id],
  );
  const chosen = useLater(() => aimed && chosenOf(aimed.now, aimed.id, aimed), aimed ?? of);
  return { proposed, chosen };
}

function Planned(pot: Pot) {
  const { state } = useShell();
  const { id, code } = pot;
  const form = useForm(treatmentDraftName(id), TreatmentDraft, emptyTreatment);
  const { proposed, chosen } = useChosen(pot, form.value);
  const begin = useBegin(id, form, proposed);
  return (
    <Frame
      title={w.with(code, bases[form.value.base].name.toLowerCase())}
      ways={[{ label: words.back, href: `#/containers/${id}` }]}
      actions={
        <Buttons side>
          <Button look="primary" centred href={`#/containers/${id}/treatment/plan`}>
            {w.plan}
          </Button>
          <Button centred href={`#/containers/${id}/treatment/ph`}>
            {w.whichPh}
          </Button>
        </Buttons>
      }
    >
      <TreatmentRule state={state.value} />
      <PotFigure chosen={chosen} />
      <LocalPh pH={chosen?.pH} />
      {chosen && <Needed chosen={chosen} containerId={id} />}
      {proposed && chosen && <BaseChoice form={form} containerId={id} pH={chosen.pH} proposed={proposed} />}
      {chosen && <ComesOf chosen={chosen} containerId={id} />}
      {chosen && <Minded chosen={chosen} containerId={id} state={state.value} />}
      <Doors state={state.value} containerId={id} begin={begin} />
      <Part rule>
        {containerWords.baseCautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export const TreatmentScreen = withPot(Planned);

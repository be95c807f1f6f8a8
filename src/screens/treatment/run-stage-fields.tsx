/** What goes in, stage after stage, and the pH at which each ends. */
import { baseIds } from '../../reference/tables';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import type { Form } from '../form';
import { NumberField } from '../number-field';
import { agentName } from '../record/treatment-words';
import { type BeginDraft, emptyStage, readTarget, type StageDraft } from './run-stages';
import { runWords as w } from './run-words';

const agents: readonly StageDraft['agent'][] = [...baseIds, 'iron'];

type Props = {
  readonly form: Form<BeginDraft>;
  readonly tried: boolean;
};

export function StageFields({ form, tried }: Props) {
  const { stages } = form.value;
  const several = stages.length > 1;
  const set = (index: number, change: Partial<StageDraft>): void =>
    form.change({ stages: stages.map((stage, i) => (i === index ? { ...stage, ...change } : stage)) });
  return (
    <Part rule title={w.stages}>
      {stages.map((stage, i) => (
        <div key={i}>
          <SelectField
            label={several ? w.agentOf(i + 1) : w.agent}
            value={stage.agent}
            options={agents.map((value) => ({ value, label: agentName(value) }))}
            onChoose={(agent) => set(i, { agent })}
            hint={stage.agent === 'iron' ? w.targetIron : undefined}
          />
          {stage.agent !== 'iron' && (
            <NumberField
              label={several ? w.targetOf(i + 1) : w.target}
              field={stage.target}
              units={['1']}
              onChange={(target) => set(i, { target })}
              read={readTarget(stages, i)}
              tried={tried}
              hint={w.targetHint}
            />
          )}
        </div>
      ))}
      <Buttons>
        {stages.length < 4 && (
          <Button look="plain" onTap={() => form.change({ stages: [...stages, emptyStage()] })}>
            {w.moreStage}
          </Button>
        )}
        {several && (
          <Button look="plain" onTap={() => form.change({ stages: stages.slice(0, -1) })}>
            {w.lessStage}
          </Button>
        )}
      </Buttons>
    </Part>
  );
}

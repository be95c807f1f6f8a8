/** The value of a local rule: a quantity, yes or no, laws, or the authority's own word. */
import { Law, type UsualRule } from '../../ledger/entries/local-rules';
import { lawNames } from '../../paperwork/rule-words';
import { Choices, Tick, TickGroup } from '../../ui/choices';
import { TextField } from '../../ui/text-field';
import { NumberField } from '../number-field';
import { type RuleFields, readAmount, type ruleFaults, takesAmount, unitsOf } from './rule-fields';
import { ruleWords, yesNoAnswers } from './rule-words';
import { ruleFormWords as w } from './words';

type Props = {
  readonly rule: UsualRule;
  readonly value: RuleFields;
  readonly change: (part: Partial<RuleFields>) => void;
  readonly faults: ReturnType<typeof ruleFaults>;
  readonly tried: boolean;
};

export function RuleValueField({ rule, value, change, faults, tried }: Props) {
  const { ask } = ruleWords[rule];
  if (takesAmount(rule))
    return (
      <NumberField
        label={ask}
        field={value.amount}
        onChange={(amount) => change({ amount })}
        read={readAmount(rule, value)}
        tried={tried}
        units={unitsOf(rule)}
      />
    );
  if (rule === 'treatment-allowed')
    return (
      <Choices
        legend={ask}
        choices={[
          { value: 'yes', label: yesNoAnswers.yes },
          { value: 'no', label: yesNoAnswers.no },
        ]}
        value={value.allowed === '' ? undefined : value.allowed}
        onChoose={(allowed) => change({ allowed })}
        error={tried ? faults.allowed : undefined}
      />
    );
  if (rule === 'laws')
    return (
      <TickGroup legend={ask} hint={w.lawsHint} error={tried ? faults.laws : undefined}>
        {Law.options.map((law) => (
          <Tick
            key={law}
            label={lawNames[law]}
            checked={value.laws.includes(law)}
            onChange={(ticked) =>
              change({
                laws: Law.options.filter((one) => (one === law ? ticked : value.laws.includes(one))),
              })
            }
          />
        ))}
      </TickGroup>
    );
  return (
    <TextField
      label={ask}
      value={value.category}
      onInput={(category) => change({ category })}
      hint={w.categoryHint}
      error={tried ? faults.category : undefined}
      maxLength={120}
      required
    />
  );
}

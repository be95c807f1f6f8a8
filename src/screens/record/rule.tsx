/** States one local rule: its value, who said so, when, and which document. */
import type { UsualRule } from '../../ledger/entries/local-rules';
import { calendarDay } from '../../rules/clocks/calendar-day';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { faultless, useTried } from '../tried';
import { words } from '../words';
import { DischargeForm } from './discharge';
import { isDischargeRule } from './discharge-fields';
import styles from './record.module.css';
import {
  isRule,
  RuleFields,
  readAmount,
  ruleFaults,
  ruleFieldsOf,
  ruleIntention,
  unitOf,
} from './rule-fields';
import { ruleWords, yesNoAnswers } from './rule-words';
import { SaidFields } from './said-fields';
import { ruleFormWords as w } from './words';

export function RuleScreen({ at: { rule = '' } }: { readonly at: Readonly<Record<string, string>> }) {
  if (isRule(rule)) return <RuleForm rule={rule} />;
  return isDischargeRule(rule) ? <DischargeForm rule={rule} /> : <Frame place="record" title={w.gone} />;
}

function RuleForm({ rule }: { readonly rule: UsualRule }) {
  const { state, go, now, zone } = useShell();
  const known = state.value.rules.get(rule)?.body;
  const { value, change, done } = useForm(`rule:${rule}`, RuleFields, () => ruleFieldsOf(rule, known));
  const leave = (): void => {
    done();
    go('record/rules');
  };
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const faults = ruleFaults(rule, value, calendarDay(now.value, zone));
  async function keep(): Promise<void> {
    tryNow();
    const intention = ruleIntention(rule, value);
    if (!intention || !faultless(faults) || !(await write(intention))) return;
    leave();
  }
  return (
    <Frame
      place="record"
      title={ruleWords[rule].name}
      second={known ? w.again : ruleWords[rule].meanwhile}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: w.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Part rule>
        {rule === 'treatment-allowed' ? (
          <Choices
            legend={ruleWords[rule].ask}
            choices={[
              { value: 'yes', label: yesNoAnswers.yes },
              { value: 'no', label: yesNoAnswers.no },
            ]}
            value={value.allowed === '' ? undefined : value.allowed}
            onChoose={(allowed) => change({ allowed })}
            error={tried ? faults.allowed : undefined}
          />
        ) : (
          <NumberField
            label={ruleWords[rule].ask}
            field={value.amount}
            onChange={(amount) => change({ amount })}
            read={readAmount(rule, value)}
            tried={tried}
            units={[unitOf(rule)]}
          />
        )}
        <SaidFields {...{ value, change, faults, tried }} />
        <Fault words={fault} />
        <p class={styles.quiet}>{words.caution}</p>
      </Part>
    </Frame>
  );
}

/** States what an authorised discharge may hold: most of each metal, or the pH between two ends. */
import type { DischargeRule } from '../../ledger/entries/local-rules';
import { ruleNames } from '../../paperwork/rule-words';
import { metals } from '../../reference/tables';
import { calendarDay } from '../../rules/clocks/calendar-day';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { Fault, useWriting } from '../fault';
import { type Typed, typed, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { faultless, useTried } from '../tried';
import { words } from '../words';
import {
  DischargeFields,
  dischargeFaults,
  dischargeFieldsOf,
  dischargeIntention,
  metalsLeft,
  readMost,
  readPh,
} from './discharge-fields';
import { capital } from './entry-words';
import styles from './record.module.css';
import { dischargeRuleWords } from './rule-words';
import { SaidFields } from './said-fields';
import { ruleFormWords, dischargeFormWords as w } from './words';

type Props = {
  readonly value: DischargeFields;
  readonly change: (part: Partial<DischargeFields>) => void;
  readonly tried: boolean;
};

const metalName = (metal: string): string => capital(metals[metal as keyof typeof metals]?.name ?? metal);

function LimitFields({ value, change, tried }: Props) {
  const { limits } = value;
  const put = (metal: string, most: Typed): void =>
    change({ limits: limits.map((line) => (line.metal === metal ? { metal, most } : line)) });
  return (
    <>
      {limits.map(({ metal, most }) => (
        <NumberField
          key={metal}
          label={w.mostOf(metalName(metal))}
          field={most}
          onChange={(typed) => put(metal, typed)}
          read={readMost(most)}
          tried={tried}
          units={['mg/L']}
          hint={w.emptyLine}
          optional
        />
      ))}
      {metalsLeft(value).length > 0 && (
        <SelectField
          key={limits.length}
          label={limits.length === 0 ? w.firstMetal : w.nextMetal}
          value={undefined}
          none={w.choose}
          options={metalsLeft(value).map((metal) => ({ value: metal, label: metalName(metal) }))}
          onChoose={(metal) => change({ limits: [...limits, { metal, most: typed('mg/L') }] })}
        />
      )}
    </>
  );
}

const PhFields = ({ value, change, tried }: Props) => (
  <>
    <NumberField
      label={w.lowest}
      field={value.low}
      onChange={(low) => change({ low })}
      read={readPh(value.low)}
      tried={tried}
      units={['1']}
    />
    <NumberField
      label={w.highest}
      field={value.high}
      onChange={(high) => change({ high })}
      read={readPh(value.high)}
      tried={tried}
      units={['1']}
    />
  </>
);

export function DischargeForm({ rule }: { readonly rule: DischargeRule }) {
  const { state, go, now, zone, sign } = useShell();
  const known = state.value.rules.get(rule)?.body;
  const form = useForm(`rule:${rule}`, DischargeFields, () => dischargeFieldsOf(known, sign.value));
  const { value, change, done } = form;
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const faults = dischargeFaults(rule, value, calendarDay(now.value, zone));
  const leave = (): void => {
    done();
    go('record/rules');
  };
  async function keep(): Promise<void> {
    tryNow();
    const intention = dischargeIntention(rule, value);
    if (!intention || !faultless(faults) || !(await write(intention))) return;
    leave();
  }
  const Fields = rule === 'discharge-limits' ? LimitFields : PhFields;
  return (
    <Frame
      place="record"
      title={ruleNames[rule]}
      second={known ? ruleFormWords.again : dischargeRuleWords[rule].meanwhile}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: ruleFormWords.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Part rule>
        <p class={styles.quiet}>{w.onlyAuthorised}</p>
        <Fields {...{ value, change, tried }} />
        {tried && <Fault words={faults.value ?? null} />}
        <SaidFields {...{ value, change, faults, tried }} />
        <Fault words={fault} />
        <p class={styles.quiet}>{words.caution}</p>
      </Part>
    </Frame>
  );
}

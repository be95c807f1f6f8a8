/** States one local rule: its value, who said so, when, which document; or takes a starting point over. */
import type { UsualRule } from '../../ledger/entries/local-rules';
import { ruleNames } from '../../paperwork/rule-words';
import { calendarDay } from '../../rules/clocks/calendar-day';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { Fault, useWriting } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { faultless, useTried } from '../tried';
import { words } from '../words';
import { DischargeForm } from './discharge';
import { isDischargeRule } from './discharge-fields';
import styles from './record.module.css';
import { isRule, RuleFields, ruleFaults, ruleFieldsOf, ruleIntention, takenOver } from './rule-fields';
import { RuleValueField } from './rule-value-field';
import { ruleWords } from './rule-words';
import { SaidFields } from './said-fields';
import { StartingPoints } from './starting-points';
import { ruleFormWords as w } from './words';

export function RuleScreen({ at: { rule = '' } }: { readonly at: Readonly<Record<string, string>> }) {
  if (isRule(rule)) return <RuleForm key={rule} rule={rule} />;
  return isDischargeRule(rule) ? <DischargeForm rule={rule} /> : <Frame place="record" title={w.gone} />;
}

function RuleForm({ rule }: { readonly rule: UsualRule }) {
  const { state, go, now, zone } = useShell();
  const known = state.value.rules.get(rule)?.body;
  const form = useForm(`rule:${rule}`, RuleFields, () => ruleFieldsOf(rule, known));
  const { value, change, done } = form;
  const pictures = usePhotos(form);
  const leave = (): void => {
    done();
    go('record/rules');
  };
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting();
  const today = calendarDay(now.value, zone);
  const faults = ruleFaults(rule, value, today);
  async function keep(): Promise<void> {
    tryNow();
    if (!faultless(faults)) return;
    const photos = await pictures.settled();
    const intention = photos && ruleIntention(rule, { ...form.latest(), photos });
    if (!intention || !(await write(intention))) return;
    leave();
  }
  return (
    <Frame
      place="record"
      title={ruleNames[rule]}
      second={known ? w.again : ruleWords[rule].meanwhile}
      ways={[
        { label: words.cancel, onTap: leave },
        { label: w.keep, strong: true, disabled: busy, onTap: () => void keep() },
      ]}
    >
      <Part rule>
        <RuleValueField {...{ rule, value, change, faults, tried }} />
      </Part>
      <StartingPoints rule={rule} taken={value.taken} onTake={(point) => change(takenOver(point, today))} />
      <Part rule title={w.whoTitle}>
        <SaidFields {...{ value, change, faults, tried }} />
        <PhotoField {...pictures.field} />
        <Fault words={fault} />
        <p class={styles.quiet}>{words.caution}</p>
      </Part>
    </Frame>
  );
}

/** Each local rule: its value and who said so, or that it is not entered and what follows from that. */
import { isUsualRule, type LocalRule } from '../../ledger/entries/local-rules';
import { type DecimalSign, formatWritten } from '../../quantities/format';
import { type Metal, metals } from '../../reference/tables';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { dischargeRules, isDischargeRule } from './discharge-fields';
import { capital } from './entry-words';
import styles from './record.module.css';
import { ruleNames } from './rule-fields';
import { dischargeRuleWords, ruleWords, yesNo } from './rule-words';
import { dischargeFormWords, recordWords, ruleFormWords as w } from './words';

/** Limits are several figures, which one column at the right cannot hold: they stand as words. */
function dischargeText(stated: LocalRule, sign: DecimalSign): string | undefined {
  if (stated.rule === 'discharge-ph')
    return dischargeFormWords.phIs(
      formatWritten(stated.value.low, sign),
      formatWritten(stated.value.high, sign),
    );
  if (stated.rule !== 'discharge-limits') return undefined;
  const limits = Object.entries(stated.value)
    .map(([metal, most]) => `${metals[metal as Metal].name} ${formatWritten(most, sign)}\u202f${most.unit}`)
    .join(', ');
  return capital(limits);
}

const Value = ({ stated }: { readonly stated: LocalRule }) => {
  const { sign } = useShell();
  if (!isUsualRule(stated)) return null;
  return stated.rule === 'treatment-allowed' ? (
    <span>{yesNo[stated.value]}</span>
  ) : (
    <FigureValue value={formatWritten(stated.value, sign.value)} unit={stated.value.unit} />
  );
};

export function RulesScreen() {
  const { state, now, sign } = useShell();
  return (
    <Frame place="record" title={w.title} second={w.second}>
      <Part rule width="edge">
        <Rows label={w.title}>
          {[...ruleNames, ...dischargeRules].map((rule) => {
            const { name, meanwhile } = isDischargeRule(rule) ? dischargeRuleWords[rule] : ruleWords[rule];
            const body = state.value.rules.get(rule)?.body;
            const href = `#/record/rules/${rule}`;
            if (!body)
              return (
                <Row
                  key={rule}
                  mark={<Mark kind="unknown" />}
                  title={name}
                  second={`${recordWords.notEntered}. ${meanwhile}`}
                  href={href}
                />
              );
            const said = w.said(body.saidBy, calendarDayText(body.saidOn, now.value));
            return (
              <Row
                key={rule}
                mark={<Mark kind="confirmed" />}
                title={name}
                second={[dischargeText(body.stated, sign.value), said, body.document]
                  .filter((part) => part !== undefined)
                  .join('; ')}
                figure={isUsualRule(body.stated) ? <Value stated={body.stated} /> : undefined}
                href={href}
              />
            );
          })}
        </Rows>
      </Part>
      <Part>
        <p class={styles.quiet}>{words.caution}</p>
      </Part>
    </Frame>
  );
}

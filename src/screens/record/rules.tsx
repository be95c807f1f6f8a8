/** Each local rule: its value and who said so, or that it is not entered and what follows from that. */
import { isUsualRule, type LocalRule } from '../../ledger/entries/local-rules';
import { formatWritten } from '../../quantities/format';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import styles from './record.module.css';
import { ruleNames } from './rule-fields';
import { ruleWords, yesNo } from './rule-words';
import { recordWords, ruleFormWords as w } from './words';

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
  const { state, now } = useShell();
  return (
    <Frame place="record" title={w.title} second={w.second}>
      <Part rule width="edge">
        <Rows label={w.title}>
          {ruleNames.map((rule) => {
            const { name, meanwhile } = ruleWords[rule];
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
                second={body.document === undefined ? said : `${said}; ${body.document}`}
                figure={<Value stated={body.stated} />}
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

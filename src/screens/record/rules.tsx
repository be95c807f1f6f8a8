/** Each local rule: its value and who said so, or that it is not entered and what follows from that. */
import {
  isAmountRule,
  type LocalRule,
  type LocalRuleStated,
  type RuleName,
} from '../../ledger/entries/local-rules';
import type { WorkshopDescribed } from '../../ledger/entries/workshop';
import { lawNames, ruleNames } from '../../paperwork/rule-words';
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
import { isDischargeRule } from './discharge-fields';
import { capital } from './entry-words';
import styles from './record.module.css';
import { dischargeRuleWords, ruleGroups, ruleWords, yesNo } from './rule-words';
import { dischargeFormWords, recordWords, ruleFormWords as w } from './words';

/** A value that one column at the right cannot hold stands as words. */
function valueText(stated: LocalRule, sign: DecimalSign): string | undefined {
  switch (stated.rule) {
    case 'discharge-ph':
      return dischargeFormWords.phIs(
        formatWritten(stated.value.low, sign),
        formatWritten(stated.value.high, sign),
      );
    case 'discharge-limits':
      return capital(
        Object.entries(stated.value)
          .map(
            ([metal, most]) =>
              `${metals[metal as Metal].name} ${formatWritten(most, sign)}\u202f${most.unit}`,
          )
          .join(', '),
      );
    case 'laws':
      return stated.value.map((law) => lawNames[law]).join('; ');
    case 'generator-category':
      return stated.value;
    default:
      return undefined;
  }
}

const Value = ({ stated }: { readonly stated: LocalRule }) => {
  const { sign } = useShell();
  if (stated.rule === 'treatment-allowed') return <span>{yesNo[stated.value]}</span>;
  return isAmountRule(stated) ? (
    <FigureValue value={formatWritten(stated.value, sign.value)} unit={stated.value.unit} />
  ) : null;
};

function StatedRow({ rule, body }: { readonly rule: RuleName; readonly body: LocalRuleStated }) {
  const { now, sign } = useShell();
  const name = ruleNames[rule];
  const text = valueText(body.stated, sign.value);
  // A text of law says so by itself; the day is the one on which it was taken over.
  const said = w.said(body.saidBy, calendarDayText(body.saidOn, now.value));
  const from = body.takenFrom ? w.asStands(body.takenFrom.cite) : undefined;
  const hasFigure = body.stated.rule === 'treatment-allowed' || isAmountRule(body.stated);
  return (
    <Row
      mark={<Mark kind="confirmed" />}
      title={name}
      second={[text, from ?? said, body.document].filter((part) => part !== undefined).join('; ')}
      figure={hasFigure ? <Value stated={body.stated} /> : undefined}
      href={`#/record/rules/${rule}`}
    />
  );
}

function RuleRow({ rule }: { readonly rule: RuleName }) {
  const { state } = useShell();
  const body = state.value.rules.get(rule)?.body;
  if (body) return <StatedRow rule={rule} body={body} />;
  const name = ruleNames[rule];
  const { meanwhile } = isDischargeRule(rule) ? dischargeRuleWords[rule] : ruleWords[rule];
  return (
    <Row
      mark={<Mark kind="unknown" />}
      title={name}
      second={`${recordWords.notEntered}. ${meanwhile}`}
      href={`#/record/rules/${rule}`}
    />
  );
}

type Who = Pick<WorkshopDescribed, 'authority' | 'collector' | 'generatorNumber'>;

/** Whom to ask, and under which number they know the workshop. */
function WhoRows({ authority, collector, generatorNumber }: Who) {
  const href = '#/record/workshop';
  const rows = [
    { title: w.authority, said: authority && `${authority.name}, ${authority.contact}` },
    {
      title: w.collector,
      said: collector && [collector.name, collector.contact, collector.licence].filter(Boolean).join(', '),
    },
    { title: w.generatorNumber, said: generatorNumber },
  ];
  return (
    <>
      {rows.map(({ title, said }) => (
        <Row
          key={title}
          {...(said === undefined ? { mark: <Mark kind="unknown" /> } : { start: 'text' as const })}
          title={title}
          second={said ?? recordWords.notEntered}
          href={href}
        />
      ))}
    </>
  );
}

export function RulesScreen() {
  const { state } = useShell();
  return (
    <Frame place="record" title={w.title} second={w.second}>
      <Part rule title={w.whomTitle} width="edge">
        <Rows label={w.whomTitle}>
          <WhoRows {...(state.value.workshop?.body ?? {})} />
        </Rows>
      </Part>
      {ruleGroups.map(({ title, rules }) => (
        <Part key={title} rule title={title} width="edge">
          <Rows label={title}>
            {rules.map((rule) => (
              <RuleRow key={rule} rule={rule} />
            ))}
          </Rows>
        </Part>
      ))}
      <Part>
        <p class={styles.quiet}>{words.caution}</p>
      </Part>
    </Frame>
  );
}

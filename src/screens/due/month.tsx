/** One month: what is counted and what is not, by which rule, and the category that it speaks for. */
import { type MonthHeld, monthHeld } from '../../ledger/quantities-now';
import type { Judged } from '../../rules/quantities/counting';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { shown, streamTitle } from '../amounts';
import { FigureRow } from '../figure-row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { WorkingPage } from '../working';
import { citedText } from './cited-text';
import { useAgainstText } from './due';
import styles from './due.module.css';
import { monthText, dueWords as w } from './words';

const isMonth = (text: string): boolean => /^\d{4}-(0[1-9]|1[0-2])$/.test(text);

function JudgedRow({ judged }: { readonly judged: Judged }) {
  const { state, sign } = useShell();
  const { arising, lacks } = judged;
  const found = state.value.containers.get(arising.id)?.body;
  return (
    <Row
      title={found ? w.foundIn(unbroken(found.code)) : streamTitle(state.value, arising.id)}
      second={lacks.length > 0 ? w.lacks(lacks) : undefined}
      figure={arising.kg ? <FigureValue {...shown(arising.kg, sign.value)} /> : <span>{w.noMass}</span>}
      href={found ? `#/containers/${arising.id}` : `#/due/wastes/${arising.id}`}
    />
  );
}

/** By federal law of the USA; only where that is looked at. A candidate, never a verdict. */
function Category({ held: { month, against } }: { readonly held: MonthHeld }) {
  const { state } = useShell();
  if (!against.reference) return null;
  const { likely, atHigh } = month.category;
  const stated = state.value.rules.get('generator-category')?.body.stated;
  const second = [
    likely === atHigh ? '' : w.atHigh(w.categories[atHigh]),
    month.unweighed.length > 0 ? w.unweighed : '',
    w.candidate,
    stated?.rule === 'generator-category' ? `${w.entered(stated.value)}.` : '',
  ];
  return (
    <Part rule width="edge" title={w.category}>
      <Rows label={w.category}>
        <Row
          mark={<Mark kind="candidate" />}
          title={w.categories[likely]}
          second={second.filter(Boolean).join(' ')}
        />
      </Rows>
    </Part>
  );
}

type WastesProps = { readonly title: string; readonly all: readonly Judged[] };

/** Under each rule what it speaks of. */
function Wastes({ title, all }: WastesProps) {
  const rules = [...new Set(all.map(({ rule }) => rule))];
  return (
    <>
      {rules.map((rule, i) => {
        const under = all.filter((one) => one.rule === rule);
        const [first] = under;
        return (
          first && (
            <Part key={rule} rule width="edge" title={i === 0 ? title : undefined}>
              <p class={styles.rule}>{citedText(first.citation)}</p>
              <Rows label={title}>
                {under.map((judged) => (
                  <JudgedRow key={judged.arising.id} judged={judged} />
                ))}
              </Rows>
            </Part>
          )
        );
      })}
    </>
  );
}

export function MonthScreen({ at: { month = '' } }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, zone } = useShell();
  const againstText = useAgainstText();
  const ways = [{ label: words.back, href: '#/due/months' }];
  if (!isMonth(month)) return <Frame title={w.lost} ways={ways} />;
  const held = monthHeld(state.value, month, zone);
  const own = held.month.judged.filter(({ rule }) => rule !== 'other-month');
  return (
    <Frame title={monthText(month)} second={w.monthsSecond} ways={ways}>
      <Part rule width="edge">
        <Rows>
          <FigureRow
            title={w.counted}
            second={againstText(held.against)}
            figure={held.month.nonAcute}
            href={`#/due/months/${month}/working`}
          />
        </Rows>
      </Part>
      {held.month.unweighed.length > 0 && (
        <Part>
          <Notice mark="unknown">{`${w.atLeast(held.month.unweighed.length)}.`}</Notice>
        </Part>
      )}
      <Category held={held} />
      <Wastes title={w.counted} all={own.filter(({ counts }) => counts)} />
      <Wastes title={w.notCounted} all={own.filter(({ counts }) => !counts)} />
      <Part rule>
        {own.length === 0 && <p>{w.nothing}</p>}
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function MonthWorking({
  at: { month = '', steps = '' },
}: {
  readonly at: Readonly<Record<string, string>>;
}) {
  const { state, zone } = useShell();
  return (
    <WorkingPage
      root={isMonth(month) ? monthHeld(state.value, month, zone).month.nonAcute : undefined}
      steps={steps}
      here={`due/months/${month}/working`}
      subject={isMonth(month) ? monthText(month) : ''}
      back={`due/months/${month}`}
    />
  );
}

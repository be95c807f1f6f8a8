/** What a laboratory found, line by line: one is open at a time, so that a long list stays short on a small phone. */
import { useEffect, useRef } from 'preact/hooks';
import { nameOfElement } from '../../paperwork/element-names';
import { foundIn } from '../../paperwork/lab-words';
import { capital, joined } from '../../paperwork/words';
import { formatWritten } from '../../quantities/format';
import { type Element, levelElements } from '../../rules/element-levels';
import { Button, Buttons } from '../../ui/button';
import { Tick } from '../../ui/choices';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { SelectField } from '../../ui/select-field';
import type { Form } from '../form';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { words } from '../words';
import {
  type LabDraft,
  type LineDraft,
  movedTo,
  nextOpen,
  readLine,
  unitsIn,
  type Where,
  wheresFor,
  withLines,
} from './draft';
import styles from './lab-report.module.css';
import { theEight, theUsual } from './usual';
import { labWords as w, whereWords } from './words';

const nameOf = (element: Element): string => capital(nameOfElement(element) ?? element);

type Props = { readonly form: Form<LabDraft>; readonly tried: boolean };
type LineProps = Props & { readonly line: LineDraft; readonly at: number };

const wheres = (all: readonly Where[]) => all.map((value) => ({ value, label: whereWords[value] }));

function ClosedLine({ form, tried, line, at }: LineProps) {
  const { sign } = useShell();
  const { level, state } = readLine(form.value.lines, at);
  const wrong = state === 'wrong' && tried;
  const where = foundIn[line.in];
  return (
    <Row
      mark={wrong ? <Mark kind="wrong" /> : undefined}
      title={nameOf(line.element)}
      second={line.below ? w.noneDownTo(where) : w.in(where)}
      figure={
        level.state === 'written' ? (
          <FigureValue value={formatWritten(level.written, sign.value)} unit={level.written.unit} />
        ) : (
          w.noLevel
        )
      }
      onTap={() => form.change({ open: at })}
    />
  );
}

function OpenLine({ form, tried, line, at }: LineProps) {
  const { state } = useShell();
  const { lines } = form.value;
  const { level, twice } = readLine(lines, at);
  const change = (changed: LineDraft): void =>
    form.change({ lines: lines.map((one, i) => (i === at ? changed : one)) });
  const next = nextOpen(lines, at);
  const name = nameOf(line.element);
  return (
    <Row
      title={name}
      second={line.below ? w.noneDownTo(foundIn[line.in]) : w.in(foundIn[line.in])}
      below={
        <div class={styles.open}>
          <NumberField
            label={w.level(name)}
            field={line.level}
            units={unitsIn(line.in)}
            onChange={(typed) => change({ ...line, level: typed })}
            read={level}
            tried={tried}
            optional={!line.below}
            hint={null}
          />
          <Tick
            label={w.below}
            second={w.belowSecond}
            checked={line.below}
            onChange={(below) => change({ ...line, below })}
          />
          <Button onTap={() => form.change({ open: next })}>{next === null ? w.done : w.next}</Button>
          <SelectField
            label={w.foundIn}
            value={line.in}
            options={wheres(wheresFor(state.value))}
            onChoose={(where) => change(movedTo(line, where))}
            error={twice ? w.twice : undefined}
          />
          <Button
            look="plain"
            onTap={() => form.change({ lines: lines.filter((_, i) => i !== at), open: null })}
          >
            {w.remove(name.toLowerCase())}
          </Button>
        </div>
      }
    />
  );
}

/** The open line has the focus once a tap has opened it; where none is open any more, the first thing to add has. */
function useFocus(open: number | null) {
  const place = useRef<HTMLDivElement>(null);
  const before = useRef(open);
  useEffect(() => {
    if (before.current === open) return;
    before.current = open;
    const inside = open === null ? '[data-add] select' : 'input[inputmode="decimal"]';
    place.current?.querySelector<HTMLElement>(inside)?.focus();
  }, [open]);
  return place;
}

/** One tap for the usual ones, each other by name. */
function AddLines({ form }: Pick<Props, 'form'>) {
  const { state } = useShell();
  const { value, change } = form;
  const told = new Set(value.lines.filter((one) => one.in === value.where).map(({ element }) => element));
  const rest = [...theUsual, ...levelElements.filter((element) => !theUsual.includes(element))].filter(
    (element) => !told.has(element),
  );
  return (
    <div data-add>
      <SelectField
        label={w.where}
        value={value.where}
        options={wheres(wheresFor(state.value))}
        onChoose={(where) => change({ where })}
      />
      {theEight.some((element) => !told.has(element)) && (
        <Buttons>
          <Button
            second={capital(joined(theEight.map((element) => nameOfElement(element) ?? element)))}
            onTap={() => change(withLines(value, theEight))}
          >
            {w.eight}
          </Button>
        </Buttons>
      )}
      {rest.length > 0 && (
        <SelectField
          label={w.another}
          value={undefined}
          none={words.choose}
          options={rest.map((element) => ({ value: element, label: nameOf(element) }))}
          onChoose={(element) => change(withLines(value, [element]))}
        />
      )}
    </div>
  );
}

export function ResultLines({ form, tried }: Props) {
  const { lines, open } = form.value;
  const place = useFocus(open);
  return (
    <div ref={place}>
      <Part rule title={w.results}>
        <p>{w.resultsSecond}</p>
      </Part>
      {lines.length > 0 && (
        <Part width="edge">
          <Rows label={w.lines}>
            {lines.map((line, at) =>
              at === open ? (
                <OpenLine key={`${line.element} ${at}`} form={form} tried={tried} line={line} at={at} />
              ) : (
                <ClosedLine key={`${line.element} ${at}`} form={form} tried={tried} line={line} at={at} />
              ),
            )}
          </Rows>
        </Part>
      )}
      <Part>
        <AddLines form={form} />
      </Part>
    </div>
  );
}

/** One question: what to look at above, the answers at the thumb, the ways out in the bar. */
import { useState } from 'preact/hooks';
import type { ChoiceItem, Item } from '../../safety/checklist-item';
import type { Standing } from '../../safety/checklist-run';
import type { Given } from '../../safety/run-schema';
import { shownChoices } from '../../safety/shown-choices';
import { safetyWords } from '../../safety/words';
import type { BarAction } from '../../ui/bar';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Pegs } from '../../ui/pegs';
import { useTapGuard } from '../../ui/tap-guard';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { AnswerButtons, YesNo } from './answers';
import styles from './checklist.module.css';
import { type Further, FurtherPage } from './further';
import { KeyedFigure, ReadingPad } from './reading';
import type { RunOnScreen } from './use-run';
import { answerFault, sentence, words, written } from './words';

type Props = {
  readonly on: RunOnScreen;
  readonly next: Extract<Standing, { state: 'next' }>;
  /** "Filter the leach liquor, B-18". */
  readonly task: string;
  /** Where pausing leads. */
  readonly home: string;
};

const waysOut = (
  { undo, takeBack, run }: RunOnScreen,
  { naReasons }: Item,
  home: string,
  ask: (further: Further) => void,
): readonly BarAction[] => [
  ...(naReasons
    ? [{ label: safetyWords.notApplicable, onTap: () => ask({ ask: 'not-applicable', reasons: naReasons }) }]
    : []),
  { label: words.why, onTap: () => ask({ ask: 'why' }) },
  { label: words.pause, href: `#/${home}` },
  {
    label: undo ? words.undo(undo.said) : words.backOne,
    onTap: takeBack,
    disabled: run.answered.length === 0,
  },
];

type AnswersProps = {
  readonly item: Item;
  readonly seed: string;
  readonly keyed: string;
  readonly onKeyed: (keyed: string) => void;
  readonly onGive: (given: Given, said: string) => void;
  readonly onName: (choice: ChoiceItem['choices'][number]) => void;
};

function Answers({ item, seed, keyed, onKeyed, onGive, onName }: AnswersProps) {
  const { sign } = useShell();
  if (item.kind === 'confirm')
    return (
      <YesNo
        yes={item.yes}
        onAnswer={(yes) =>
          onGive({ kind: 'confirm', yes }, yes ? (item.yes ?? safetyWords.yes) : safetyWords.no)
        }
      />
    );
  if (item.kind === 'reading') {
    const said = written(keyed.replace(',', '.'), item.unit, sign.value);
    const enter = (): void => onGive({ kind: 'reading', written: keyed }, said);
    return <ReadingPad item={item} keyed={keyed} onKeyed={onKeyed} onEnter={enter} />;
  }
  const choices = shownChoices(item, seed);
  const choose = (answer: string): void => {
    const choice = choices.find((one) => one.answer === answer);
    if (choice?.names) onName(choice);
    // Until the screen of the ventilation answers it: what a person read there, and said to be so.
    else if (choice?.result)
      onGive({ kind: 'worked-out', result: choice.result, from: words.byHand }, sentence(answer));
    else onGive({ kind: 'choice', answer }, sentence(answer));
  };
  return <AnswerButtons answers={choices.map(({ answer }) => answer)} onAnswer={choose} />;
}

/** `key` it by item and opening, so that nothing of the question before lingers. */
export function Question({ on, next, task, home }: Props) {
  const { item } = next;
  const { moment } = useShell();
  const [further, setFurther] = useState<Further | null>(null);
  const [keyed, setKeyed] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const guard = useTapGuard(further?.ask ?? '', moment);
  function give(given: Given, said: string): void {
    const failure = on.give(given, said);
    if (failure?.code === 'reason-missing' && given.kind !== 'not-applicable' && given.kind !== 'worked-out')
      setFurther({ ask: 'reason', given, said, reasons: failure.reasons });
    else setFault(failure ? answerFault(failure) : null);
  }
  if (further)
    return <FurtherPage item={item} further={further} guard={guard} onFurther={setFurther} onGive={give} />;
  return (
    <Frame
      title={item.ask}
      voice={item.kind === 'reading' ? 'title' : 'question'}
      focusKey={`${item.id} ${on.run.openedAt}`}
      above={<Pegs at={next.number} of={next.of} words={words.position(next.number, next.of)} task={task} />}
      ways={waysOut(on, item, home, setFurther)}
      actions={
        <Answers
          item={item}
          seed={on.runId}
          keyed={keyed}
          onKeyed={guard(setKeyed)}
          onGive={guard(give)}
          onName={guard((choice) => setFurther({ ask: 'who', choice }))}
        />
      }
    >
      <Part>
        {item.kind === 'reading' && <KeyedFigure item={item} list={on.run.list.id} keyed={keyed} />}
        <p class={styles.look}>{item.look}</p>
        {next.tooQuick && (
          <Notice mark="due" size="small" role="status">
            {safetyWords.lookThenTap}
          </Notice>
        )}
        {fault !== null && <p role="alert">{fault}</p>}
      </Part>
    </Frame>
  );
}

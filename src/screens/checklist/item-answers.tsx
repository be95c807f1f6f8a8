/** The answers to a question by its kind. Where the app answers it, what it knows stands there instead. */
import type { ChoiceItem, Item } from '../../safety/checklist-item';
import type { Given } from '../../safety/run-schema';
import { shownChoices } from '../../safety/shown-choices';
import { safetyWords } from '../../safety/words';
import { useShell } from '../shell';
import { AnswerButtons, YesNo } from './answers';
import type { Guard } from './further-pages';
import { ReadingPad } from './reading';
import { Stations, type WhereAsked } from './stations';
import { sentence, written } from './words';
import { type WorkedOut, WorkedOutAnswer } from './worked-out';

/** What the app knows that a person is not asked for. */
export type AnswersOfApp = {
  readonly where: WhereAsked;
  readonly workedOut: WorkedOut;
};

type AnswersProps = {
  readonly item: Item;
  readonly seed: string;
  readonly keyed: string;
  readonly onKeyed: (keyed: string) => void;
  readonly onGive: (given: Given, said: string) => void;
  readonly onName: (choice: ChoiceItem['choices'][number]) => void;
  readonly byApp?: AnswersOfApp | undefined;
  readonly guard: Guard;
};

/** What can be answered, in the order in which it stands on the screen: to be read aloud. */
export function answersAloud(item: Item, seed: string): readonly string[] {
  if (item.kind === 'choice') return shownChoices(item, seed).map(({ answer }) => answer);
  return item.kind === 'confirm' ? [item.yes ?? safetyWords.yes, safetyWords.no] : [item.unit];
}

export function Answers({ item, seed, keyed, onKeyed, onGive, onName, byApp, guard }: AnswersProps) {
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
  if (item.answeredBy !== undefined && byApp)
    return <WorkedOutAnswer item={item} workedOut={byApp.workedOut} onGive={onGive} />;
  const choices = shownChoices(item, seed);
  const choose = (answer: string): void => {
    const choice = choices.find((one) => one.answer === answer);
    if (choice?.names) onName(choice);
    else onGive({ kind: 'choice', answer }, sentence(answer));
  };
  const answers = <AnswerButtons answers={choices.map(({ answer }) => answer)} onAnswer={choose} />;
  return byApp ? (
    <Stations item={item} where={byApp.where} guard={guard}>
      {answers}
    </Stations>
  ) : (
    answers
  );
}

/** The answers to a question, at the thumb. None looks right or wrong before it is given. */
import type { ComponentChildren } from 'preact';
import { Button, Buttons } from '../../ui/button';
import styles from './checklist.module.css';
import { sentence, words } from './words';

/** From here on they stand closer together. */
const many = 5;

export const AnswerButtons = (props: {
  readonly answers: readonly string[];
  readonly onAnswer: (answer: string) => void;
  readonly below?: ComponentChildren;
}) => {
  const buttons = props.answers.map((answer) => (
    <Button key={answer} onTap={() => props.onAnswer(answer)}>
      {sentence(answer)}
    </Button>
  ));
  return (
    <fieldset class={styles.answers} aria-label={words.answers}>
      {props.answers.length >= many ? <div class={styles.many}>{buttons}</div> : <Buttons>{buttons}</Buttons>}
      {props.below}
    </fieldset>
  );
};

/** @param yes what is seen when it is in order; absent in an item that somebody added without such words */
export const YesNo = (props: {
  readonly yes?: string | undefined;
  readonly onAnswer: (yes: boolean) => void;
}) => (
  <fieldset class={styles.answers} aria-label={words.answers}>
    <div class={styles.opposites}>
      <Button onTap={() => props.onAnswer(true)}>{props.yes ?? words.yes}</Button>
      <Button onTap={() => props.onAnswer(false)}>{words.no}</Button>
    </div>
  </fieldset>
);

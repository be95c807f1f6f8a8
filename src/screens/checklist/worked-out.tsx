/** An answer that the app gives from its own working: nobody can tap the others. */
import { gramsInLot, ventilationFound } from '../../ledger/ventilation-found';
import type { ChoiceItem } from '../../safety/checklist-item';
import type { Given } from '../../safety/run-schema';
import { Button, Buttons } from '../../ui/button';
import { amountText, momentText } from '../amounts';
import { useShell } from '../shell';
import styles from './checklist.module.css';
import { placeWords as w } from './place-words';
import { sentence, words } from './words';

export type WorkedOut = {
  /** Where it is worked out. */
  readonly href: string;
  readonly batchId: string | null;
  readonly stationId: string | undefined;
  readonly step: string;
  /** Older ones are of another charge. */
  readonly since: string;
};

export function WorkedOutAnswer(props: {
  readonly item: ChoiceItem;
  readonly workedOut: WorkedOut;
  readonly onGive: (given: Given, said: string) => void;
}) {
  const { state, now, sign } = useShell();
  const { item, workedOut, onGive } = props;
  const found = ventilationFound(state.value, workedOut);
  const answer = item.choices.find(({ result }) => result === found?.body.verdict)?.answer;
  if (!found || answer === undefined)
    return (
      <div class={styles.doors}>
        <p>{w.onlyWorkedOut}</p>
        <ul class={styles.untapped} aria-label={words.answers}>
          {item.choices.map((choice) => (
            <li key={choice.answer}>{sentence(choice.answer)}</li>
          ))}
        </ul>
        <Button look="primary" second={w.workOutSecond} href={workedOut.href}>
          {w.workOut}
        </Button>
      </div>
    );
  const where = state.value.stations.get(found.body.stationId)?.body.name ?? w.notWrittenDown;
  const when = momentText(found.at, now.value);
  const { verdict, portion } = found.body;
  const max = gramsInLot(found.body);
  const from = w.workedFrom(when, where);
  return (
    <fieldset class={styles.answers} aria-label={words.answers}>
      <Buttons>
        <Button
          look="primary"
          second={w.worked(when, where)}
          onTap={() =>
            onGive(
              {
                kind: 'worked-out',
                result: verdict,
                from: portion ? w.atMost(from, amountText(portion, sign.value)) : from,
                ...(max === undefined ? {} : { bounds: { 'ventilation-portion': { max, from } } }),
              },
              sentence(answer),
            )
          }
        >
          {sentence(answer)}
        </Button>
        <Button href={workedOut.href}>{w.workOutAgain}</Button>
      </Buttons>
    </fieldset>
  );
}

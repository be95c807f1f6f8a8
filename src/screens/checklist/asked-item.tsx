/** One question as it is asked: what to look at above, the answers at the thumb, the ways out in the bar. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Item } from '../../safety/checklist-item';
import type { RunFailure } from '../../safety/checklist-run';
import type { Given } from '../../safety/run-schema';
import { sketches } from '../../safety/sketches';
import { safetyWords } from '../../safety/words';
import type { BarAction } from '../../ui/bar';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Sketch } from '../../ui/sketches/sketch';
import { useTapGuard } from '../../ui/tap-guard';
import { Frame } from '../frame';
import { useShell } from '../shell';
import styles from './checklist.module.css';
import { type Further, FurtherPage } from './further';
import { Answers, type AnswersOfApp, answersAloud } from './item-answers';
import { useReadAloud } from './read-aloud';
import { KeyedFigure } from './reading';
import { answerFault, words } from './words';

export type AskedItemProps = {
  readonly item: Item;
  /** Id of the list, and what orders the answers. */
  readonly list: string;
  readonly seed: string;
  /** Changes when the question is opened anew. */
  readonly openedAt: string;
  /** How far it is: pegs and task. */
  readonly above: ComponentChildren;
  /** Under the question, such as that the list is late. */
  readonly second?: string | undefined;
  readonly tooQuick?: boolean | undefined;
  /** The task's own ways out, after the question's. */
  readonly ways: readonly BarAction[];
  /** Null when it went in; otherwise what is still missing. */
  readonly give: (given: Given, said: string) => RunFailure | null;
  /** Why it was not written down. */
  readonly fault?: string | null;
  readonly byApp?: AnswersOfApp | undefined;
};

/** `key` it by item and opening, so that nothing of the question before lingers. */
export function AskedItem(props: AskedItemProps) {
  const { item, seed, byApp } = props;
  const { moment } = useShell();
  const [further, setFurther] = useState<Further | null>(null);
  const [keyed, setKeyed] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const guard = useTapGuard(further?.ask ?? '', moment);
  useReadAloud(further ? null : [item.ask, item.look, ...answersAloud(item, seed)].join('. '));
  function give(given: Given, said: string): void {
    const failure = props.give(given, said);
    if (failure?.code === 'reason-missing' && given.kind !== 'not-applicable' && given.kind !== 'worked-out')
      setFurther({ ask: 'reason', given, said, reasons: failure.reasons });
    else setFault(failure ? answerFault(failure) : null);
  }
  if (further)
    return <FurtherPage item={item} further={further} guard={guard} onFurther={setFurther} onGive={give} />;
  const { naReasons } = item;
  const wrong = fault ?? props.fault ?? null;
  return (
    <Frame
      title={item.ask}
      second={props.second}
      voice={item.kind === 'reading' ? 'title' : 'question'}
      focusKey={`${item.id} ${props.openedAt}`}
      above={props.above}
      ways={[
        ...(naReasons
          ? [
              {
                label: safetyWords.notApplicable,
                onTap: () => setFurther({ ask: 'not-applicable', reasons: naReasons }),
              },
            ]
          : []),
        { label: words.why, onTap: () => setFurther({ ask: 'why' }) },
        ...props.ways,
      ]}
      actions={
        <Answers
          item={item}
          seed={seed}
          keyed={keyed}
          onKeyed={guard(setKeyed)}
          onGive={guard(give)}
          onName={guard((choice) => setFurther({ ask: 'who', choice }))}
          byApp={byApp}
          guard={guard}
        />
      }
    >
      <Part>
        {item.kind === 'reading' && <KeyedFigure item={item} list={props.list} keyed={keyed} />}
        <div class={styles.seen}>
          <p class={styles.look}>{item.look}</p>
          {item.sketch && <Sketch of={item.sketch} label={sketches[item.sketch]} />}
        </div>
        {props.tooQuick && (
          <Notice mark="due" size="small" role="status">
            {safetyWords.lookThenTap}
          </Notice>
        )}
        {wrong !== null && <p role="alert">{wrong}</p>}
      </Part>
    </Frame>
  );
}

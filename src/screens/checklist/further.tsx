/** What still has to be said before an answer goes in, one thing a page. */
import type { Choice, Item } from '../../safety/checklist-item';
import type { Given } from '../../safety/run-schema';
import { safetyWords } from '../../safety/words';
import { useShell } from '../shell';
import { type Guard, Reason, When, Who } from './further-pages';
import { Why } from './why';
import { sentence, wanted, words } from './words';

export type Further =
  | {
      readonly ask: 'reason';
      readonly given: Exclude<Given, { kind: 'not-applicable' | 'worked-out' }>;
      readonly said: string;
      readonly reasons: readonly string[];
    }
  | { readonly ask: 'not-applicable'; readonly reasons: readonly string[] }
  | { readonly ask: 'who'; readonly choice: Choice }
  | { readonly ask: 'when'; readonly choice: Choice; readonly name: string }
  | { readonly ask: 'why' };

type Props = {
  readonly item: Item;
  readonly further: Further;
  readonly guard: Guard;
  readonly onFurther: (further: Further | null) => void;
  readonly onGive: (given: Given, said: string) => void;
};

export function FurtherPage({ item, further, guard, onFurther, onGive }: Props) {
  const { sign } = useShell();
  const way = { guard, onBack: () => onFurther(null) };
  switch (further.ask) {
    case 'why':
      return <Why item={item} onBack={way.onBack} />;
    case 'not-applicable':
      return (
        <Reason
          {...way}
          title={words.reason.notApplicable}
          said={item.ask}
          reasons={further.reasons}
          onReason={(reason) => onGive({ kind: 'not-applicable', reason }, safetyWords.notApplicable)}
        />
      );
    case 'reason':
      return (
        <Reason
          {...way}
          title={words.reason.title}
          said={words.reason.said(item.ask, further.said)}
          wanted={item.kind === 'reading' ? wanted(item, sign.value) : undefined}
          reasons={further.reasons}
          onReason={(reason) => onGive({ ...further.given, reason }, further.said)}
        />
      );
    case 'who':
      return (
        <Who
          {...way}
          answer={sentence(further.choice.answer)}
          onName={(name) =>
            further.choice.names === 'person-and-time'
              ? onFurther({ ask: 'when', choice: further.choice, name })
              : onGive({ kind: 'choice', answer: further.choice.answer, who: { name } }, name)
          }
        />
      );
    case 'when':
      return (
        <When
          {...way}
          name={further.name}
          onTime={(at) =>
            onGive(
              { kind: 'choice', answer: further.choice.answer, who: { name: further.name, at } },
              further.name,
            )
          }
        />
      );
    default:
      return further satisfies never;
  }
}

/** The next question of a run. */
import type { Standing } from '../../safety/checklist-run';
import type { BarAction } from '../../ui/bar';
import { Pegs } from '../../ui/pegs';
import { AskedItem } from './asked-item';
import { partOf } from './list-for';
import { placeWords } from './place-words';
import type { RunOnScreen } from './use-run';
import { words } from './words';

type Props = {
  readonly on: RunOnScreen;
  readonly next: Extract<Standing, { state: 'next' }>;
  /** "Filter the leach liquor, B-18, Hood 1". */
  readonly task: string;
  /** Under the question, such as that the list is late. */
  readonly second?: string | undefined;
  /** Where pausing leads. */
  readonly home: string;
};

/** Before the first answer of a person there is nothing to take back: the place is what can be changed then. */
function backOne({ undo, takeBack, run, askWhere }: RunOnScreen): BarAction {
  const given = run.answered.some(({ byApp }) => byApp === undefined);
  if (!given && run.answered.length > 0) return { label: placeWords.another, onTap: askWhere };
  return { label: undo ? words.undo(undo.said) : words.backOne, onTap: takeBack, disabled: !given };
}

/** `key` it by item and opening, so that nothing of the question before lingers. */
export function Question({ on, next, task, second, home }: Props) {
  const { list, context } = on.run;
  return (
    <AskedItem
      item={next.item}
      list={list.id}
      seed={on.runId}
      openedAt={on.run.openedAt}
      above={<Pegs at={next.number} of={next.of} words={words.position(next.number, next.of)} task={task} />}
      second={second}
      tooQuick={next.tooQuick}
      ways={[{ label: words.pause, href: `#/${home}` }, backOne(on)]}
      give={on.give}
      byApp={{
        where: on.where,
        workedOut: {
          href: `#/ventilation/${partOf(context)}/${list.id}`,
          batchId: context.batchId,
          stationId: context.place?.id,
          step: list.step,
          since: on.since,
        },
      }}
    />
  );
}

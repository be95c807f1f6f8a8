/** One question of during or after the step, asked on its own; the answer stands under the list's answers. */
import { useState } from 'preact/hooks';
import { answeredLater, askedLater, laterIntention, treatmentOn } from '../../ledger/asked-later';
import type { State } from '../../ledger/state';
import { type Door, doorsFor, type Item } from '../../safety/checklist-item';
import type { RunFailure } from '../../safety/checklist-run';
import { stopOf } from '../../safety/judge-answer';
import type { Answered, Given } from '../../safety/run-schema';
import { Pegs } from '../../ui/pegs';
import { tick } from '../../ui/stay-awake';
import { performedWords } from '../fault';
import { useShell } from '../shell';
import { AskedItem } from './asked-item';
import { knownOf } from './known-here';
import { LaterStop } from './later-stop';
import { codeOf, homeOf } from './list-for';
import { Nowhere } from './nowhere';
import { taskLine, words } from './words';

type Asked = NonNullable<ReturnType<typeof askedLater>>;
type Stopped = { readonly answered: Answered; readonly doors: readonly Door[] };

/** The page of the step that runs, or ran. */
function homeOfAsked(state: State, { told }: Asked): string {
  const treatment = treatmentOn(state, told.entryId);
  return treatment ? `treatment/${treatment.body.treatmentId}` : homeOf(told.body);
}

function AskLater({ asked, item }: { readonly asked: Asked; readonly item: Item }) {
  const shell = useShell();
  const { state, perform, moment, go } = shell;
  const [opened, setOpened] = useState(moment);
  const [stop, setStop] = useState<Stopped | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const home = homeOfAsked(state.value, asked);
  const { told, list, open } = asked;

  async function write(answered: Answered): Promise<void> {
    const done = await perform(laterIntention(told.entryId, answered));
    if (!done.ok) return setFault(performedWords(done));
    if (answered.verdict === 'stops') setStop({ answered, doors: doorsFor(item, stopOf(answered)) });
    else go(home, 'replace');
  }
  function give(given: Given): RunFailure | null {
    const treatment = treatmentOn(state.value, told.entryId);
    const known = treatment ? knownOf(shell, list, told.body, treatment.body) : {};
    const result = answeredLater(asked, item, given, opened, moment(), known);
    if (!result.ok) return result.failure;
    tick();
    void write(result.value);
    return null;
  }
  function again(): void {
    setStop(null);
    setOpened(moment());
  }
  if (stop) return <LaterStop item={item} {...stop} home={home} onAgain={again} />;
  const number = open.findIndex(({ id }) => id === item.id) + 1;
  return (
    <AskedItem
      key={opened}
      item={item}
      list={list.id}
      seed={told.body.runId}
      openedAt={opened}
      above={
        <Pegs
          at={number}
          of={open.length}
          words={words.position(number, open.length)}
          task={taskLine(
            words.later.task[item.when ?? 'during'],
            codeOf(state.value, told.body),
            told.body.place,
          )}
        />
      }
      ways={[{ label: words.later.notNow, href: `#/${home}` }]}
      give={give}
      fault={fault}
    />
  );
}

export function Later({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const asked = askedLater(state.value, at.entry ?? '');
  if (!asked) return <Nowhere>{words.clearance.lost}</Nowhere>;
  // Answered meanwhile, it can be asked again: the pot may have warmed since.
  const item = asked.list.items.find(({ id, when }) => id === at.item && when !== undefined);
  if (!item) return <Nowhere>{words.later.gone}</Nowhere>;
  return <AskLater asked={asked} item={item} key={item.id} />;
}

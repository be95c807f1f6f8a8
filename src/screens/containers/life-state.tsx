/** Where a container is in its life, by word and shape, with what follows from it. */
import { type LifeName, lifeOf } from '../../ledger/container-life';
import type { ContainerState, State } from '../../ledger/state';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { dayText } from '../amounts';
import { useShell } from '../shell';
import { doubtWords, howWords, lifeStates, lifeWords as w } from './life-words';

type Props = { readonly state: State; readonly container: ContainerState };

/** Said by the drawing alone. */
const quiet: ReadonlySet<LifeName> = new Set(['opened', 'filling']);

/** How the doubt came, and what somebody wrote to it; or that something in it was never logged. */
function doubtTold({ marks, doubtfulSince }: ContainerState): string {
  if (doubtfulSince === null) return w.unlogged;
  const told = marks.findLast(({ body }) => body.mark === 'contents-doubtful')?.body;
  const how = told?.doubt === undefined || told.doubt === 'other' ? '' : `${doubtWords[told.doubt]}.`;
  return [how, told?.note].filter(Boolean).join(' ');
}

/** What somebody wrote when it came into this state. */
function noteOf({ marks }: ContainerState, is: LifeName): string {
  const told = marks.findLast(({ body }) => body.mark === is)?.body;
  return [told?.to, told?.document, told?.note].filter(Boolean).join(', ');
}

/** What somebody wrote ends as a sentence before another follows. */
const ended = (text: string): string => (text === '' || /[.!?]$/.test(text) ? text : `${text}.`);

export function LifeState({ state, container }: Props) {
  const { now } = useShell();
  const { is, since } = lifeOf(state, container);
  const { word, mark, follows } = lifeStates[is];
  if (quiet.has(is) || mark === undefined) return null;
  const told = is === 'not-determined' ? doubtTold(container) : noteOf(container, is);
  return (
    <Notice mark={mark} second={follows ? [ended(told), follows].filter(Boolean).join(' ') : told}>
      {since === null ? word : w.since(word, dayText(since, now.value))}
    </Notice>
  );
}

/** Who said what is in it, where somebody did. */
export function Determined({ container: { determined } }: Pick<Props, 'container'>) {
  const { now } = useShell();
  if (!determined) return null;
  const { saidBy, how } = determined.body;
  return (
    <Notice mark="confirmed">
      {w.saidIs(saidBy, howWords[how].toLowerCase(), dayText(determined.at, now.value))}
    </Notice>
  );
}

/** The way to what can be tested and who may know. */
export function TestAndAsk({ state, container }: Props) {
  if (lifeOf(state, container).is !== 'not-determined') return null;
  return (
    <Part width="edge">
      <Rows>
        <Row
          start="text"
          title={w.testAsk}
          second={w.testAskSecond}
          href={`#/containers/${container.body.containerId}/unknown`}
        />
      </Rows>
    </Part>
  );
}

/** What is missing or doubtful in a set, and who must still say yes; it never keeps the set from being made. */

import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { candidatesOf } from '../../ledger/container-candidates';
import { containerFigures } from '../../ledger/container-figures';
import { codeOfContainer } from '../../ledger/put-away';
import { type Apart, apartAmong } from '../../ledger/readiness';
import type { ContainerState } from '../../ledger/state';
import { stillToSay } from '../../ledger/still-to-say';
import { Button } from '../../ui/button';
import { Tick } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { dayText, momentText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { useLater, useOneByOne } from '../treatment/use-worked-out';
import { vesselDrawing } from '../vessel-drawing';
import { thingInside, words } from '../words';
import { checkRows, rowsLeft } from './check-rows';
import { type Checked, ContainerCheck } from './container-check';
import { SetPage, type SetPageProps } from './make-set';
import styles from './papers.module.css';
import { SayRows } from './say-rows';
import { setHref } from './set-address';
import type { SetBegun } from './set-draft';
import { setWords as w } from './set-words';
import { SheetChoice } from './sheet-choice';
import { useWayBack } from './way-back';
import { paperWords } from './words';

function useChecked(containers: readonly ContainerState[]) {
  const { state, now, zone, sign } = useShell();
  const looking = { state: state.value, now: now.value, zone, sign: sign.value };
  const checked = useOneByOne(
    containers,
    (container) => {
      const figures = containerFigures(state.value, container.body.containerId);
      return {
        drawing: vesselDrawing(state.value, container, figures),
        rows: checkRows(looking, container, figures),
      };
    },
    state.value,
  );
  const said = useOneByOne(
    containers,
    (container) => {
      const all = candidatesOf(state.value, container);
      return typeof all === 'string' ? [] : stillToSay(container, all);
    },
    state.value,
  );
  return { checked, said };
}

type Shown = { readonly of: Checked | undefined; readonly labels: boolean; readonly item: ComponentChildren };

/** Items of the list, each drawn anew only when something of its own has changed: of many, one after the other is worked out. */
function useItems(
  labels: boolean,
  draw: (container: ContainerState, checked: Checked | undefined) => ComponentChildren,
) {
  const shown = useRef(new Map<ContainerState, Shown>());
  return (container: ContainerState, of: Checked | undefined): ComponentChildren => {
    const before = shown.current.get(container);
    if (before && before.of === of && before.labels === labels) return before.item;
    const item = draw(container, of && { ...of, rows: rowsLeft(of.rows, { labels }) });
    shown.current.set(container, { of, labels, item });
    return item;
  };
}

function ApartNotices({ containers }: { readonly containers: readonly ContainerState[] }) {
  const { state } = useShell();
  const ids = containers.map(({ body }) => body.containerId);
  const found: readonly Apart[] = useLater(() => apartAmong(state.value, ids), state.value) ?? [];
  const codes = (of: readonly string[]) =>
    of.map((id) => unbroken(codeOfContainer(state.value, id) ?? '?')).join(', ');
  if (found.length === 0) return null;
  return (
    <Part rule title={w.apartTitle}>
      {found.map(({ a, b, withA, withB }) => (
        <Notice key={`${a} ${b}`} mark="stop" second={w.apartSecond(codes(withA), codes(withB))}>
          {w.apart(thingInside(a), thingInside(b))}
        </Notice>
      ))}
    </Part>
  );
}

function Printing({ form }: Pick<SetBegun, 'form'>) {
  const { value, change } = form;
  return (
    <Part rule title={w.printTitle}>
      <SheetChoice value={value.sheet} onChoose={(sheet) => change({ sheet })} />
      <Tick
        label={w.labels}
        second={w.labelsSecond}
        checked={value.labels}
        onChange={(labels) => change({ labels })}
      />
      <Tick
        label={paperWords.working}
        second={paperWords.workingSecond}
        checked={value.working}
        onChange={(working) => change({ working })}
      />
      <p>{words.caution}</p>
    </Part>
  );
}

/** The door to the signature, with how it stands. */
function SignDoor({ set, begun }: { readonly set: string; readonly begun: SetBegun }) {
  const { now } = useShell();
  const { name, at } = begun.form.value.signing;
  const href = `${setHref(set)}/sign`;
  switch (begun.signed) {
    case 'not-signed':
      return (
        <Button href={href} second={w.signSecond}>
          {w.sign}
        </Button>
      );
    case 'signed':
      return (
        <Button href={href} second={w.signedSecond}>
          {w.signed(name, momentText(at, now.value))}
        </Button>
      );
    case 'signed-before':
      return (
        <Button href={href} second={w.signedBeforeSecond}>
          {w.signedBefore}
        </Button>
      );
  }
}

/** What is worked out for it ends with it: nothing of that goes on while the set is made. */
function Check({ set, begun, act }: SetPageProps) {
  const { state, now } = useShell();
  const { containers } = begun;
  const { checked, said } = useChecked(containers);
  const { leave, back } = useWayBack();
  useEffect(back, []);
  const onOpen = (): void => leave(set, containers.length);
  const { labels } = begun.wanted;
  const itemOf = useItems(labels, (container, found) => (
    <ContainerCheck key={container.body.containerId} container={container} checked={found} onOpen={onOpen} />
  ));
  const whole = containers.filter(
    (one) => rowsLeft(checked.get(one)?.rows ?? [], { labels }).length === 0,
  ).length;
  const wordsOf = new Map(containers.map((one) => [one.body.containerId, said.get(one) ?? []]));
  return (
    <Frame
      title={w.title}
      second={w.for(state.value.workshop?.body.collector?.name, dayText(now.value, now.value))}
      ways={[
        { label: words.back, href: '#/papers' },
        { label: w.toChoice, href: '#/papers/new' },
      ]}
      actions={containers.length > 0 && act(<SignDoor set={set} begun={begun} />)}
    >
      {containers.length === 0 && (
        <Part>
          <p>{w.noneChosen}</p>
        </Part>
      )}
      {containers.length > shownWithoutCount && checked.size === containers.length && (
        <Part>
          <p role="status">{w.nothingMissingIn(whole, containers.length)}</p>
        </Part>
      )}
      <ul class={styles.checks}>
        {containers.map((container) => itemOf(container, checked.get(container)))}
      </ul>
      <ApartNotices containers={containers} />
      <Part rule title={w.sayTitle} width="edge">
        <SayRows containers={containers} said={wordsOf} onOpen={onOpen} />
      </Part>
      <Printing form={begun.form} />
    </Frame>
  );
}

export const CheckSet = ({ at }: { readonly at: Readonly<Record<string, string>> }) => (
  <SetPage set={at.set ?? ''} page={Check} />
);

/** Fewer are seen at one look. */
const shownWithoutCount = 4;

/** Hand over as it is, or treat first: one container, or all that hold liquid. It writes nothing but prices. */

import { useMemo } from 'preact/hooks';
import { liquidContainers } from '../../ledger/liquid-containers';
import { codeOfContainer } from '../../ledger/put-away';
import { type TwoWays, type TwoWaysAsked, twoWays } from '../../ledger/two-ways';
import { unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Begun } from '../begun';
import { TreatmentRule } from '../containers/base-rows';
import { containerWords } from '../containers/words';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { useOneByOne, useSettled } from '../treatment/use-worked-out';
import { words } from '../words';
import { draftName, readTwoWays, TwoWaysDraft, useFirst } from './draft';
import { Fields, FinerFields } from './fields';
import { Prices } from './prices';
import { Cautions, Handed, MoneyPart, MonthPart, StillIs } from './result';
import styles from './side-by-side.module.css';
import { twoWaysWords as w } from './words';

/** Whether it may be done here; whom to ask where nobody has said. */
function LocalRules({ two }: { readonly two: TwoWays }) {
  const { state } = useShell();
  const { authority, collector } = state.value.workshop?.body ?? {};
  const names = [authority?.name, collector?.name].filter((name) => name !== undefined);
  return (
    <>
      <TreatmentRule state={state.value} />
      {two.allowed === 'not-stated' && (
        <Rows>
          <Row
            title={w.ask}
            second={names.length > 0 ? w.askThem(w.and(names)) : w.askUnnamed}
            href="#/record/rules/treatment-allowed"
          />
        </Rows>
      )}
    </>
  );
}

/** Containers of which nothing is said of treating them, each with the reason. */
function LeftOut({ two }: { readonly two: TwoWays }) {
  const { state } = useShell();
  if (two.leftOut.length === 0) return null;
  // The one that was asked for is handed over as it is all the same.
  const title = two.asItIs && two.counted.length === 0 ? w.whyNot : w.leftOut;
  return (
    <Part rule title={title} width="edge">
      <Rows>
        {two.leftOut.map(({ containerId, why }) => (
          <Row
            key={containerId}
            mark={<Mark kind={why.code === 'ammonia' ? 'stop' : 'unknown'} />}
            title={unbroken(codeOfContainer(state.value, containerId) ?? '')}
            second={
              w.notTreated(why) ?? containerWords.noBase[why.code as keyof typeof containerWords.noBase]
            }
            href={`#/containers/${containerId}`}
          />
        ))}
      </Rows>
    </Part>
  );
}

/**
 * The two ways, once the dose of each container is found: one after the other, with the page drawn between. What does not
 * change the doses is answered at once.
 */
function useCompared(ids: readonly string[], asked: TwoWaysAsked | undefined): TwoWays | undefined {
  const { state } = useShell();
  const now = state.value;
  const base = asked?.base;
  const pH = useSettled(asked?.pH);
  const basis = useMemo(() => ({ now, base, pH }), [now, base, pH]);
  const keys = base === undefined || pH === undefined ? [] : ids;
  const found = useOneByOne(keys, (id) => asked && twoWays(now, [id], asked), basis);
  return asked && asked.pH === pH && found.size === ids.length ? twoWays(now, ids, asked) : undefined;
}

type PageProps = {
  /** Absent: all that hold liquid. */
  readonly id?: string;
  readonly ids: readonly string[];
  readonly second: (two: TwoWays | undefined) => string;
};

function Comparison({ id, ids, second }: PageProps) {
  const form = useForm(draftName(id), TwoWaysDraft, useFirst(id));
  const { reads, asked } = readTwoWays(form.value);
  const two = useCompared(ids, asked);
  const here =
    id === undefined ? '#/containers/as-it-is-or-treated' : `#/containers/${id}/as-it-is-or-treated`;
  const back = id === undefined ? '#/containers' : `#/containers/${id}/treatment`;
  return (
    <Frame title={w.title} second={second(two)} ways={[{ label: words.back, href: back }]}>
      <Begun form={form} />
      {two && <LocalRules two={two} />}
      <Fields form={form} reads={reads} />
      {asked && !two && (
        <Part>
          <p role="status">{w.coming}</p>
        </Part>
      )}
      {two?.asItIs && <Handed two={two} here={here} />}
      <div class={styles.form}>
        <FinerFields form={form} reads={reads} />
      </div>
      {two && <LeftOut two={two} />}
      {two?.asItIs && <MoneyPart two={two} here={here} />}
      <div class={styles.form}>
        <Prices key={form.value.base} base={form.value.base} />
      </div>
      {two?.asItIs && <MonthPart two={two} here={here} />}
      {two && <StillIs two={two} base={form.value.base} />}
      <Cautions />
    </Frame>
  );
}

function Nothing({ why, back }: { readonly why: string; readonly back: string }) {
  return (
    <Frame title={w.title} ways={[{ label: words.back, href: back }]}>
      <Part>
        <Notice mark="unknown">{why}</Notice>
      </Part>
    </Frame>
  );
}

export function TwoWaysScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  if (!container) return <Nothing why={containerWords.gone} back="#/containers" />;
  if (!liquidContainers(state.value).includes(id))
    return <Nothing why={w.noLiquid} back={`#/containers/${id}/treatment`} />;
  return <Comparison id={id} ids={[id]} second={() => w.of(unbroken(container.body.code))} />;
}

export function TwoWaysOfAll() {
  const { state } = useShell();
  const ids = liquidContainers(state.value);
  return ids.length === 0 ? (
    <Nothing why={w.noLiquidAll} back="#/containers" />
  ) : (
    <Comparison ids={ids} second={(two) => w.ofAll(two?.counted.length, ids.length)} />
  );
}

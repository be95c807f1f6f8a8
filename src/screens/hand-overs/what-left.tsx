/** The containers of a load: how much left, how each stands now, and where the collector has another amount. */
import { type Difference, differenceOf } from '../../ledger/hand-over-differences';
import type { HandedOverPart, HandOverState } from '../../ledger/state';
import { handingOver } from '../../reference/handing-over-tables';
import { Mark, type MarkKind } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, dayText, heldText, shown } from '../amounts';
import record from '../record/record.module.css';
import { useShell } from '../shell';
import { sourceText } from '../source-text';
import { differsText } from '../today/words';
import { WorkingPage } from '../working';
import { codesOf, standingOf } from './load';
import { NotKept } from './not-kept';
import { handOverWords as w } from './words';

type LoadProps = { readonly handOver: HandOverState };
type PartProps = LoadProps & { readonly part: HandedOverPart };

function LeftRow({ handOver, part }: PartProps) {
  const { state, now, sign } = useShell();
  const { containerId, agreed, held, proofAt, backAt, note } = part;
  const is = standingOf(state.value, handOver, part);
  const says = {
    awaited: w.proofAwaited,
    proved: w.proved(dayText(proofAt ?? now.value, now.value)),
    back: w.back(dayText(backAt ?? now.value, now.value)),
    elsewhere: w.wentAgain,
  }[is];
  return (
    <Row
      {...(is === 'proved' ? { mark: <Mark kind="confirmed" /> } : { start: 'text' as const })}
      title={codesOf(state.value, [containerId])}
      second={[says, note].filter(Boolean).join('. ')}
      figure={<span>{agreed ? amountText(agreed, sign.value) : heldText(held, sign.value)}</span>}
      href={`#/containers/${containerId}`}
    />
  );
}

const recordText = ({ record }: Difference, sign: '.' | ','): string => {
  const { value, unit } = shown(record, sign);
  return `${value}\u202f${unit}`;
};

const marksOf: Readonly<Record<Difference['standing'], MarkKind | undefined>> = {
  over: 'wrong',
  'may be over': 'unknown',
  under: undefined,
};

function DifferenceRow({ handOver, part }: PartProps) {
  const { state, sign } = useShell();
  const code = codesOf(state.value, [part.containerId]);
  const found = differenceOf(state.value, part);
  if (!found || !part.agreed)
    return <Row mark={<Mark kind="unknown" />} title={w.nothingTells(code)} second={w.nothingTellsSecond} />;
  const mark = marksOf[found.standing];
  const amounts = w.differenceSecond(amountText(part.agreed, sign.value), recordText(found, sign.value));
  return (
    <Row
      {...(mark === undefined ? { start: 'text' as const } : { mark: <Mark kind={mark} /> })}
      marked={mark === 'wrong'}
      title={w.difference(code, differsText(found.share.value.toFixed(), sign.value))}
      second={`${amounts}. ${w.standing[found.standing]}.`}
      href={`#/hand-overs/${handOver.body.handOverId}/difference/${part.containerId}`}
      equals
    />
  );
}

export function WhatLeft({ handOver }: LoadProps) {
  const differing = handOver.parts.filter(({ agreed }) => agreed !== undefined);
  const { difference } = handingOver;
  return (
    <>
      <Part rule width="edge" title={w.wentWith}>
        <Rows label={w.wentWith}>
          {handOver.parts.map((part) => (
            <LeftRow key={part.containerId} handOver={handOver} part={part} />
          ))}
        </Rows>
      </Part>
      {differing.length > 0 && (
        <>
          <Part rule width="edge" title={w.differences}>
            <Rows label={w.differences}>
              {differing.map((part) => (
                <DifferenceRow key={part.containerId} handOver={handOver} part={part} />
              ))}
            </Rows>
          </Part>
          <Part>
            <details class={record.fold}>
              <summary>
                <span>{w.differencesRule(difference.value)}</span>
              </summary>
              <p>{sourceText(difference)}</p>
              <p>{difference.note}</p>
            </details>
          </Part>
        </>
      )}
    </>
  );
}

export function DifferenceWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const { id = '', container = '', steps = '' } = at;
  const part = state.value.handOvers.get(id)?.parts.find(({ containerId }) => containerId === container);
  if (!part) return <NotKept />;
  return (
    <WorkingPage
      root={differenceOf(state.value, part)?.share}
      steps={steps}
      here={`hand-overs/${id}/difference/${container}`}
      subject={w.differenceOf(codesOf(state.value, [container]))}
      back={`hand-overs/${id}`}
    />
  );
}

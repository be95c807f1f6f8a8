/** One hand-over: what is still awaited of it, what left, who took it, signatures, papers, and what came of it. */
import { awaited } from '../../ledger/due';
import { photosNamed } from '../../ledger/photos-named';
import type { HandOverState } from '../../ledger/state';
import { Button, Buttons } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { markOfDue } from '../due/rows';
import { weekday } from '../due/words';
import { FileRows } from '../files/file-rows';
import { Frame } from '../frame';
import { PhotoStrip } from '../photos/photo-strip';
import { useShell } from '../shell';
import { SignatureShown } from '../signing';
import { words } from '../words';
import { Facts } from './facts';
import { away, codesOf, proofDueOf } from './load';
import { NotKept } from './not-kept';
import { ToldSince } from './told-since';
import { WhatLeft } from './what-left';
import { handOverWords as w } from './words';

type Props = { readonly handOver: HandOverState };

/** Proof first: it is what is chased. */
function Awaited({ handOver }: Props) {
  const { state, now, zone } = useShell();
  const { handOverId } = handOver.body;
  const open = awaited(state.value, handOver);
  const due = proofDueOf(state.value, handOverId, now.value, zone);
  if (open.length === 0) {
    const back = away(state.value, handOver).length === 0 && handOver.proofs.length === 0;
    return <Notice mark={back ? 'leaving' : 'confirmed'}>{back ? w.allBack : w.allProved}</Notice>;
  }
  const title = w.awaits(codesOf(state.value, open));
  if (!due)
    return (
      <Rows>
        <Row
          mark={<Mark kind="unknown" />}
          title={title}
          second={w.awaitsNoRule}
          href="#/record/rules/proof-days"
        />
      </Rows>
    );
  const day = weekday(due.day, now.value);
  return (
    <Rows>
      <Row
        mark={<Mark kind={markOfDue(due)} share={due.shareLeft} />}
        title={title}
        second={due.daysLeft < 0 ? w.awaitsSince(day) : w.awaitsBy(day)}
        href={`#/due/days/${due.id}`}
        equals
      />
    </Rows>
  );
}

function WhoTook({ handOver: { body, at } }: Props) {
  const { state, now } = useShell();
  const { collector, driver, vehicle, document, destination, paperId, note } = body;
  const facts = w.facts;
  return (
    <Part rule title={w.who}>
      <Facts
        of={[
          [w.collector, collector.name],
          [facts.at, momentText(at, now.value)],
          [facts.licence, collector.licence ?? w.notTold],
          [facts.contact, collector.contact],
          [facts.driver, driver],
          [facts.vehicle, vehicle ?? w.notTold],
          [facts.document, document ?? w.notTold],
          [facts.destination, destination ?? w.notTold],
          [facts.paper, paperId && (state.value.papers.get(paperId)?.body.fileName ?? '?')],
          [facts.note, note],
        ]}
      />
      <PhotoStrip photos={photosNamed(body)} label={w.photos} />
      <FileRows files={body.files ?? []} />
    </Part>
  );
}

const Signatures = ({ handOver: { body } }: Props) => (
  <Part rule title={w.signatures}>
    {(['generator', 'collector'] as const).map((of) => {
      const signature = body.signatures[of];
      return signature ? (
        <div key={of}>
          <p>{of === 'generator' ? w.signGenerator : w.signCollector}</p>
          <SignatureShown signature={signature} />
        </div>
      ) : (
        <Notice key={of} mark="unknown">
          {w.notSigned[of]}
        </Notice>
      );
    })}
  </Part>
);

function Actions({ handOver }: Props) {
  const { state } = useShell();
  const page = `#/hand-overs/${handOver.body.handOverId}`;
  const open = awaited(state.value, handOver);
  return (
    <Button
      look="primary"
      voice="serif"
      href={`${page}/proof`}
      second={w.fileProofSecond(codesOf(state.value, open))}
    >
      {w.fileProof}
    </Button>
  );
}

function Doors({ handOver }: Props) {
  const { state } = useShell();
  const page = `#/hand-overs/${handOver.body.handOverId}`;
  return (
    <Part rule>
      <Buttons>
        <Button href={`${page}/receipt`} second={w.receiptSecond}>
          {w.receipt}
        </Button>
        {away(state.value, handOver).length > 0 && (
          <Button href={`${page}/back`} second={w.loadBackSecond}>
            {w.loadBack}
          </Button>
        )}
        <Button href={`${page}/history`} second={w.historySecond}>
          {w.history}
        </Button>
        <Button href={`#/record/entry/${handOver.entryId}`} second={w.correctSecond}>
          {w.correct}
        </Button>
      </Buttons>
      <p>{words.caution}</p>
    </Part>
  );
}

export function HandOverScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now } = useShell();
  const handOver = state.value.handOvers.get(at.id ?? '');
  if (!handOver) return <NotKept />;
  const open = awaited(state.value, handOver).length > 0;
  return (
    <Frame
      place="papers"
      title={w.left(handOver.body.collector.name)}
      second={momentText(handOver.at, now.value)}
      actions={open ? <Actions handOver={handOver} /> : undefined}
    >
      <Part width="edge">
        <Awaited handOver={handOver} />
      </Part>
      <WhatLeft handOver={handOver} />
      <ToldSince handOver={handOver} />
      <WhoTook handOver={handOver} />
      <Signatures handOver={handOver} />
      <Doors handOver={handOver} />
    </Frame>
  );
}

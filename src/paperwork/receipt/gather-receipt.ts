/** Gathers what a receipt says from a hand-over and from what has come of it since. */

import type Decimal from 'decimal.js';
import { awaited, proofDueOf } from '../../ledger/due';
import type { Amount } from '../../ledger/entries/containers';
import type { Signature } from '../../ledger/entries/signatures';
import { differenceOf } from '../../ledger/hand-over-differences';
import { entriesIn } from '../../ledger/opening';
import { codeOfContainer } from '../../ledger/put-away';
import type { HandedOverPart, HandOverState, State } from '../../ledger/state';
import { printed } from '../../quantities/format';
import { calendarDayText, dayOf, dayText } from '../dates';
import { type Asked, amountText, heldText } from '../disposal/asked';
import { workshopOf } from '../disposal/gather';
import { signatureData } from '../signature-data';
import { capital, joined, notDetermined, streamWords, unbroken } from '../words';
import { type ReceiptContent, type ReceiptData, sealedReceipt } from './receipt-data';
import { receiptWords as w } from './receipt-words';

type Part = ReceiptContent['containers'][number];

const codeOf = (state: State, id: string): string => unbroken(codeOfContainer(state, id) ?? notDetermined);

/** What had been put in and not taken out when it left: by then it was what its last movement left. */
function whatWas(state: State, { containerId, asItLeft }: HandedOverPart): string {
  const streams = (asItLeft && state.containers.get(containerId)?.contents) || [];
  const kinds = streams.flatMap(({ streamId }) => state.streams.get(streamId ?? '')?.body.stream ?? []);
  const names = [...new Set(kinds)].map((kind) => streamWords[kind]);
  return names.length === 0 ? notDetermined : capital(joined(names));
}

const isNone = ({ volume, mass }: { readonly volume: Decimal; readonly mass: Decimal }): boolean =>
  volume.isZero() && mass.isZero();

function comparison(state: State, part: HandedOverPart, asked: Asked) {
  const { agreed } = part;
  if (!agreed) return { comparison: notDetermined } as const;
  const found = differenceOf(state, part);
  if (!found) return { comparison: 'not compared' } as const;
  const { share } = found;
  if (share.value.isZero()) return { comparison: w.asRecorded } as const;
  const { value, low, high } = printed(share, asked.sign);
  return { comparison: 'differs', difference: w.difference(value, low ?? value, high ?? value) } as const;
}

function since({ zone }: Asked, { backAt, proofAt }: HandedOverPart): string {
  const told = [
    ...(backAt === null ? [] : [w.cameBack(dayText(backAt, zone))]),
    ...(proofAt === null ? [] : [w.proofFiled(dayText(proofAt, zone))]),
  ];
  return told.length === 0 ? w.withCollector : told.join('; ');
}

const agreedText = (agreed: Amount | undefined, { sign }: Asked): string =>
  agreed ? amountText(agreed, sign) : notDetermined;

function partOf(asked: Asked, part: HandedOverPart): Part {
  const { state, sign } = asked;
  const { containerId, held, agreed, note } = part;
  return {
    containerId,
    code: codeOf(state, containerId),
    what: whatWas(state, part),
    recorded: isNone(held) ? notDetermined : heldText(held, sign),
    agreed: agreedText(agreed, asked),
    ...comparison(state, part, asked),
    ...(note === undefined ? {} : { note }),
    since: since(asked, part),
  };
}

const signed = (signature: Signature | undefined) => (signature ? signatureData(signature) : 'not signed');

function sinceThen({ state, zone }: Asked, { rejected, proofs }: HandOverState) {
  const codes = (ids: readonly string[]) => ids.map((id) => codeOf(state, id));
  return {
    returned: rejected.map(({ at, body }) => ({
      on: dayOf(at, zone),
      containers: codes(body.containerIds),
      saidBy: body.saidBy ?? notDetermined,
      why: body.why,
      document: body.document ?? notDetermined,
    })),
    proofs: proofs.map(({ at, body }) => ({
      on: dayOf(at, zone),
      containers: codes(body.containerIds),
      saidBy: body.saidBy ?? notDetermined,
      document: body.document ?? notDetermined,
      treatedHow: body.treatedHow ?? notDetermined,
      datedOn: body.datedOn ?? notDetermined,
    })),
  };
}

/** @throws when the hand-over is not in the record */
export function receiptData(handOverId: string, asked: Asked): ReceiptData {
  const { state, now, zone, madeBy, demo } = asked;
  const handOver = state.handOvers.get(handOverId);
  const last = state.log.at(-1);
  if (!handOver || !last) throw new Error('a receipt needs a hand-over of the record');
  const { body, at, parts } = handOver;
  const due = proofDueOf(state, handOver, now, zone);
  return sealedReceipt({
    v: 1,
    kind: 'hand-over-receipt',
    language: 'en',
    demo,
    madeAt: now,
    zone,
    madeBy: madeBy ?? notDetermined,
    workshop: workshopOf(state, madeBy),
    handOverId,
    handedOverAt: at,
    collector: {
      name: body.collector.name,
      licence: body.collector.licence ?? notDetermined,
      contact: body.collector.contact ?? notDetermined,
    },
    driver: body.driver ?? notDetermined,
    vehicle: body.vehicle ?? notDetermined,
    document: body.document ?? notDetermined,
    destination: body.destination ?? notDetermined,
    setHash: state.papers.get(body.paperId ?? '')?.body.contentHash ?? notDetermined,
    ...(body.note === undefined ? {} : { note: body.note }),
    containers: parts.map((part) => partOf(asked, part)),
    signatures: {
      generator: signed(body.signatures.generator),
      collector: signed(body.signatures.collector),
    },
    ...sinceThen(asked, handOver),
    awaited: awaited(state, handOver).map((id) => codeOf(state, id)),
    proofDue: due === null ? notDetermined : calendarDayText(due),
    cautions: [...w.cautions],
    lastEntry: { number: entriesIn(state), id: last.id, hash: last.hash, writtenAt: last.writtenAt },
  });
}

/** Gathers all that the paper of a year says from the state, as plain data with a hash. */
import { capital as capitalised } from '../../chemistry/evidence';
import { entriesIn } from '../../ledger/opening';
import { type KindRow, type YearAccount, yearAccount } from '../../ledger/year-account';
import type { Balance, BalanceLine } from '../../ledger/year-balance';
import { type Days, whenIn } from '../../ledger/year-days';
import type { Stood, Weighed, WentPart } from '../../ledger/year-masses';
import type { PerSilver as PerSilverTold } from '../../ledger/year-silver';
import type { Figure } from '../../quantities/figure';
import type { StreamKind } from '../../safety/stream-kind';
import { dayOf } from '../dates';
import { type Asked, amountText } from '../disposal/asked';
import { workshopOf } from '../disposal/gather';
import type { PaperFigure } from '../disposal/paper-figure';
import { workedLines } from '../disposal/worked-lines';
import { type Tell, untold } from '../progress';
import { capital, notDetermined, streamWords } from '../words';
import {
  accountNotes,
  balanceSays,
  besidesMeans,
  besidesName,
  codeStanding,
  gapSays,
  lineMeans,
  lineName,
  schemeName,
  substanceName,
  upsetSays,
} from './account-words';
import { kindsText, type Names, namesIn } from './names';
import { type MassData, nothing, sealedYear, type YearContent, type YearData } from './year-data';
import { yearPaperWords as w } from './year-words';

type Context = {
  readonly asked: Asked;
  readonly account: YearAccount;
  readonly names: Names;
  /** Printed, with its working taken up. */
  readonly of: (figure: Figure) => PaperFigure;
};

const orNot = ({ of }: Context, figure: Figure | null | undefined): PaperFigure | typeof notDetermined =>
  figure ? of(figure) : notDetermined;

function massOf(context: Context, { sum, unweighed }: Weighed): MassData {
  const noMass = unweighed.map((id) => context.names.either(id));
  return { sum: sum ? context.of(sum) : noMass.length > 0 ? notDetermined : nothing, noMass };
}

const kindsOf = (context: Context, rows: readonly KindRow[]): YearContent['kinds'] =>
  rows.map(({ kind, mass, streamIds }) => ({
    kind,
    called: capital(streamWords[kind]),
    wastes: streamIds.length,
    mass: massOf(context, mass),
  }));

const monthsOf = (context: Context): YearContent['months'] => {
  const { account, asked, names } = context;
  const now = dayOf(asked.now, asked.zone).slice(0, 7);
  return account.months
    .filter(({ month }) => month <= now)
    .map(({ month, mass, kinds, found }) => ({
      month,
      mass: massOf(context, mass),
      kinds: kindsOf(context, kinds),
      found: found.map(names.container),
    }));
};

const wastesOf = (context: Context): YearContent['wastes'] =>
  context.account.wastes.map(({ streamId, kind, month, as, kg }) => ({
    waste: context.names.waste(streamId),
    kind,
    month,
    counted: as === 'arose',
    mass: orNot(context, kg),
  }));

/** What the record held is said, and that nobody knows. */
function holdsText({ asked }: Context, id: string, kinds: readonly StreamKind[]): string {
  const doubted = (asked.state.containers.get(id)?.doubtfulSince ?? null) !== null;
  return doubted && kinds.length > 0 ? w.doubted(kindsText(kinds).toLowerCase()) : kindsText(kinds);
}

const hereOf = (context: Context, all: readonly Stood[]): YearContent['hereAtEnd'] =>
  all.map(({ id, of, kinds, kg }) => ({
    thing: of === 'container' ? context.names.container(id) : context.names.waste(id),
    holds: holdsText(context, id, kinds),
    mass: orNot(context, kg),
  }));

function leftPart(
  context: Context,
  { containerId, kinds, kg, agreed, counts }: WentPart,
  proofAt: string | null,
): YearContent['otherwise'][number] {
  const { sign, zone } = context.asked;
  return {
    container: context.names.container(containerId),
    holds: kindsText(kinds),
    mass: orNot(context, kg),
    agreed: agreed ? amountText(agreed, sign) : notDetermined,
    counted: counts,
    proofOn: proofAt === null ? notDetermined : dayOf(proofAt, zone),
  };
}

const loadsOf = (context: Context): YearContent['loads'] =>
  context.account.went.loads.map(({ handOver, parts, mass }) => {
    const { body, at, proofs } = handOver;
    const how = proofs.flatMap((proof) => proof.body.treatedHow ?? []);
    return {
      handOverId: body.handOverId,
      on: dayOf(at, context.asked.zone),
      collector: body.collector.name,
      licence: body.collector.licence ?? notDetermined,
      destination: body.destination ?? notDetermined,
      document: body.document ?? notDetermined,
      treatedHow: how.length > 0 ? [...new Set(how)].join('; ') : notDetermined,
      mass: massOf(context, mass),
      containers: parts.map((part) => {
        const told = handOver.parts.find(({ containerId }) => containerId === part.containerId);
        return leftPart(context, part, told?.proofAt ?? null);
      }),
    };
  });

const codesOf = (context: Context): YearContent['codes'] =>
  context.account.codes.map(({ scheme, code, standing, collector, destination, containerIds, mass }) => ({
    law: code === null ? notDetermined : (schemeName[scheme] ?? scheme),
    code: code ?? notDetermined,
    standing,
    says: code === null ? notDetermined : codeStanding[standing],
    collector,
    destination: destination ?? notDetermined,
    mass: massOf(context, mass),
    containers: containerIds.map(context.names.container),
  }));

const lineOf = (context: Context, { line, sum, parts }: BalanceLine) => {
  const means = lineMeans[line];
  return {
    line,
    called: lineName[line],
    ...(means === undefined ? {} : { means }),
    sum: context.of(sum),
    parts: parts.map(({ of, figure }) => ({ of: context.names.thing(of), amount: context.of(figure) })),
  };
};

const balanceData = (context: Context, balance: Balance): YearContent['balances'][number] => {
  const { of, ins, outs, sumIn, sumOut, off, verdict, gaps } = balance;
  return {
    of,
    called: substanceName(of),
    unit: of === 'acid' ? 'mol' : 'g',
    ins: ins.map((line) => lineOf(context, line)),
    outs: outs.map((line) => lineOf(context, line)),
    sumIn: orNot(context, sumIn),
    sumOut: orNot(context, sumOut),
    off: orNot(context, off),
    verdict,
    says: balanceSays(balance),
    gaps: gaps.map(({ why, of: thing }) => ({ thing: context.names.thing(thing), says: gapSays[why] })),
  };
};

const perSilver = (context: Context, each: readonly PerSilverTold[]) =>
  each.map(({ what, all, ratio, openIn }) => ({
    called: w.perSilver[what],
    all: orNot(context, all),
    ratio: orNot(context, ratio),
    notToldBy: openIn.map(context.names.waste),
  }));

const silverOf = (context: Context): YearContent['silver'] => {
  const { silver, each, batches, notWeighed } = context.account.silver;
  return {
    weighed: orNot(context, silver),
    each: perSilver(context, each),
    batches: batches.map((one) => ({
      batch: context.names.batch(one.batchId),
      silver: context.of(one.silver),
      each: perSilver(context, one.each),
    })),
    notWeighed: notWeighed.map(context.names.batch),
  };
};

function wrongOf({ account, asked, names }: Context): readonly string[] {
  const at = new Map(asked.state.history.map((line) => [line.entry.id, line.at]));
  const day = (entryId: string): string => names.day(at.get(entryId) ?? asked.now);
  return [
    ...account.overPlaced.map((id) => w.wrongs.overPlaced(names.waste(id).called)),
    ...account.notFollowed.map(({ entryId, containerId }) =>
      w.wrongs.notFollowed(names.container(containerId).called, day(entryId)),
    ),
    ...account.upsets.map(({ entryId, containerId, code }) =>
      w.wrongs.upset(names.container(containerId).called, day(entryId), upsetSays[code]),
    ),
  ];
}

const said = (names: readonly string[], says: (names: readonly string[]) => string): string[] =>
  names.length === 0 ? [] : [says([...new Set(names)])];

function openOf(
  data: Pick<
    YearContent,
    | 'arose'
    | 'found'
    | 'loads'
    | 'codes'
    | 'balances'
    | 'silver'
    | 'workshop'
    | 'handedOver'
    | 'end'
    | 'start'
  >,
): string[] {
  const { arose, found, loads, codes, balances, silver, workshop, handedOver, end, start } = data;
  const counted = loads.flatMap(({ containers, on, collector, destination }) =>
    containers.filter((one) => one.counted).map((one) => ({ ...one, on, collector, destination })),
  );
  const noMass = [arose, handedOver, end, start].flatMap((mass) => mass.noMass.map(({ called }) => called));
  return [
    ...(workshop.generatorNumber === notDetermined ? [w.open.generator] : []),
    ...said(noMass, w.open.noMass),
    ...said(
      found.map(({ called }) => called),
      w.open.found,
    ),
    ...said(
      counted.filter((one) => one.destination === notDetermined).map((one) => one.container.called),
      w.open.destination,
    ),
    ...said(
      counted.filter((one) => one.proofOn === notDetermined).map((one) => one.container.called),
      w.open.proof,
    ),
    ...said(
      codes
        .filter(({ code }) => code === notDetermined)
        .flatMap((row) => row.containers.map((c) => c.called)),
      w.open.code,
    ),
    ...balances.flatMap(({ called, gaps }) => (gaps.length > 0 ? [w.open.gaps(called, gaps.length)] : [])),
    ...said(
      silver.notWeighed.map(({ called }) => called),
      w.open.silver,
    ),
    w.noneOpen,
  ];
}

/** @throws RangeError where the first day is after the last */
export function yearData(days: Days, asked: Asked, tell: Tell = untold): YearData {
  const { state, now, zone, madeBy, demo, sign } = asked;
  tell({ stage: 'gathering', done: 0, of: 1 });
  const lines = workedLines(sign);
  const account = yearAccount(state, days, zone);
  const context: Context = {
    asked,
    account,
    names: namesIn(state, zone),
    of: (figure) => lines.of(figure, 'year'),
  };
  const last = state.log.at(-1);
  const workshop = workshopOf(state, madeBy);
  const told = {
    workshop,
    arose: massOf(context, account.arose),
    kinds: kindsOf(context, account.kinds),
    months: monthsOf(context),
    besides: account.besides.map(({ as, mass, kinds }) => ({
      called: besidesName[as],
      why: besidesMeans[as],
      mass: massOf(context, mass),
      kinds: kindsOf(context, kinds),
    })),
    found: account.found.map(context.names.container),
    wastes: wastesOf(context),
    start: massOf(context, account.heldAtStart),
    end: massOf(context, account.heldAtEnd),
    hereAtStart: hereOf(context, account.stood.start),
    hereAtEnd: hereOf(context, account.stood.end),
    handedOver: massOf(context, account.handedOver),
    loads: loadsOf(context),
    otherwise: account.went.otherwise.map((part) =>
      leftPart(context, part, state.containers.get(part.containerId)?.proofFiledAt ?? null),
    ),
    codes: codesOf(context),
    balances: account.balances.map((balance) => balanceData(context, balance)),
    silver: silverOf(context),
  };
  const agents = account.agents.map(({ agent, mass, treatments }) => ({
    called: capitalised(agent.replaceAll('-', ' ')),
    mass: context.of(mass),
    treatments,
  }));
  const data = sealedYear({
    v: 1,
    kind: 'year-paper',
    language: 'en',
    demo,
    madeAt: now,
    zone,
    madeBy: madeBy ?? notDetermined,
    period: days,
    over: whenIn(days, zone)(now) === 'after',
    cautions: [...w.cautions],
    confirms: w.confirms(workshop.authority),
    counting: [...accountNotes],
    notDetermined: openOf(told),
    ...told,
    toldNowhere: account.toldNowhere.map(substanceName),
    wrong: [...wrongOf(context)],
    agents,
    working: lines.lines.map(({ containerId: _, ...line }) => line),
    lastEntry: last
      ? { number: entriesIn(state), id: last.id, hash: last.hash, writtenAt: last.writtenAt }
      : notDetermined,
  });
  tell({ stage: 'gathering', done: 1, of: 1 });
  return data;
}

/** Gathers what a disposal paper says from the state. */
import Decimal from 'decimal.js';
import { isNothing } from '../../ledger/amounts';
import { containerFigures } from '../../ledger/container-figures';
import type { RuleName } from '../../ledger/entries/local-rules';
import { fillLimitPercent, fillPercent } from '../../ledger/fill';
import type { Flag } from '../../ledger/flags';
import { entriesIn } from '../../ledger/opening';
import type { ContainerState, State } from '../../ledger/state';
import { wasteKinds } from '../../ledger/waste-kinds';
import { seenIn } from '../../ledger/whole-of';
import { type DecimalSign, formatNumber, formatWritten } from '../../quantities/format';
import { neverFor } from '../../safety/never-rules';
import { calendarDayText, dayOf, dayText } from '../dates';
import { containerLink } from '../labels/container-link';
import { mustLeave } from '../must-leave';
import { type Tell, untold } from '../progress';
import { lawNames, ruleNames } from '../rule-words';
import { telephoneOf } from '../telephone';
import { notDetermined, unbroken } from '../words';
import { apartTold } from './apart';
import { type Asked, amountText, heldText, type SetAsked } from './asked';
import { candidatesOn, lawsTold, pictogramsOf } from './candidate-lines';
import { carriageOf } from './carriage';
import { basesNoteOf, basesOf, residuesOf, substancesOf } from './composition';
import { capWords, vesselWords, dataWords as w } from './data-words';
import { type ContainerData, type DisposalContent, type DisposalData, sealed } from './disposal-data';
import { emergencyOf } from './emergency';
import { entriesBehind } from './entries-behind';
import { flagWords } from './flag-words';
import { labReportsOf, phTold } from './lab-lines';
import { notDeterminedOf } from './not-determined';
import { flagsBehind } from './open-points';
import { colourOf, howItArose, layersOf, shortName, stateOf, testWasteOf, whatItIs } from './origins';
import type { PaperFigure } from './paper-figure';
import type { Or } from './printed';
import { type Amounts, amountsIn, loadOf, quantityOf } from './quantities';
import { statementOf } from './statement';
import { treatmentsTold } from './treatments';
import { type WorkedLines, workedLines } from './worked-lines';

const thin = '\u2009';

function mustLeaveBy(asked: Asked, container: ContainerState): ContainerData['mustLeaveBy'] {
  const leave = mustLeave(asked, container);
  const rule = asked.state.rules.get('storage-days')?.body;
  if (typeof leave === 'string') return leave;
  if (rule?.stated.rule !== 'storage-days') return notDetermined;
  return {
    day: leave.day,
    otherDay: leave.lastDay,
    from: leave.from,
    days: w.daysText(formatWritten(rule.stated.value, asked.sign)),
    saidBy: rule.saidBy,
    saidOn: rule.saidOn,
  };
}

/** What of it is seen: of one in doubt what was read last, before what the record counts. */
function seenText(container: ContainerState, sign: DecimalSign): string {
  if (container.doubtfulSince === null) return heldText(container.holds, sign);
  const seen = seenIn(container).map((amount) => amountText(amount, sign));
  return seen.length === 0 ? notDetermined : seen.join(', ');
}

function fillOf({ state, sign }: Asked, container: ContainerState): ContainerData['fill'] {
  const { percent, stated } = fillLimitPercent(state);
  return {
    holds: seenText(container, sign),
    capacity: amountText(container.body.capacity, sign),
    percent:
      container.doubtfulSince !== null && isNothing(container.holds)
        ? notDetermined
        : `${formatNumber(fillPercent(container), 0, sign)}${thin}%`,
    limit: w.limit(formatWritten({ value: percent, unit: '%' }, sign), stated),
    amounts: {
      volume: { value: container.holds.volume.toFixed(), unit: 'L' },
      mass: { value: container.holds.mass.toFixed(), unit: 'g' },
      capacity: { ...container.body.capacity },
      percent: { value: fillPercent(container).toFixed(), unit: '%' },
      limit: { value: percent, unit: '%' },
    },
  };
}

function flagLines({ sign, zone }: Asked, found: readonly Flag[]): string[] {
  const amount = (digits: string, unit: 'L' | 'g') =>
    `${formatNumber(new Decimal(digits), unit === 'L' ? 2 : 0, sign)}${thin}${unit}`;
  return [...new Set(found.map((flag) => flagWords(flag, amount, (iso) => dayText(iso, zone))))];
}

/** A lid that nobody closed is no matter of the record's flags, yet of whoever lifts it. */
const notClosed = ({ contents, closedAt, goneSince }: ContainerState): string[] =>
  contents.length > 0 && closedAt === null && goneSince === null ? [w.notClosed] : [];

function containerData(
  asked: SetAsked,
  lines: WorkedLines,
  container: ContainerState,
  amounts: Amounts,
): ContainerData {
  const { state, zone, sign, appAddress } = asked;
  const { body, firstWasteIn, doubtfulSince } = container;
  const { containerId } = body;
  const figures = containerFigures(state, containerId);
  const { kinds } = wasteKinds(state, containerId);
  const treated = treatmentsTold(asked, container);
  const laws = lawsTold(asked, lines, container);
  const of = (figure: Parameters<WorkedLines['of']>[0] | undefined): Or<PaperFigure> =>
    figure ? lines.of(figure, containerId) : notDetermined;
  const told: Omit<ContainerData, 'notDetermined'> = {
    containerId,
    code: unbroken(body.code),
    ...(appAddress === undefined ? {} : { link: containerLink(appAddress, containerId) }),
    empty: container.contents.length === 0 && doubtfulSince === null,
    vessel: vesselWords[body.vessel],
    capacity: amountText(body.capacity, sign),
    material: body.material === 'other' ? (body.otherMaterial ?? notDetermined) : body.material,
    cap: capWords[body.cap],
    place: body.place ?? notDetermined,
    tray: body.tray ?? notDetermined,
    name: shortName(state, container),
    whatItIs: whatItIs(state, container),
    howItArose: howItArose(asked, container),
    ...(treated.length > 0 ? { treated } : {}),
    state: stateOf(asked, container),
    colour: colourOf(asked, container),
    layers: layersOf(asked, container),
    ph: phTold(asked, container),
    fill: fillOf(asked, container),
    quantity: quantityOf(amounts, lines, containerId),
    firstWasteIn: firstWasteIn === null ? notDetermined : dayOf(firstWasteIn, zone),
    mustLeaveBy: mustLeaveBy(asked, container),
    substances: substancesOf(asked, lines, containerId, figures, amounts.mass),
    labReports: labReportsOf(asked, lines, container),
    ammonia: testWasteOf(state, container, 'ammonia-test-waste'),
    chloride: testWasteOf(state, container, 'chloride-test-waste'),
    liquor: of(figures.load?.volume),
    density: of(figures.density),
    residues: residuesOf(asked, lines, containerId, figures),
    bases: basesOf(asked, lines, containerId, figures),
    basesNote: basesNoteOf(figures),
    mustNotMeet: neverFor(kinds).map(({ short, never, happens, source, status }) => ({
      rule: short,
      never,
      happens,
      source,
      status,
    })),
    pictograms: [...pictogramsOf(asked, container)],
    candidates: candidatesOn(asked, container),
    ...(laws ? { laws } : {}),
    carriage: carriageOf(asked, lines, container),
    flags: [...notClosed(container), ...flagLines(asked, flagsBehind(state, containerId))],
    entries: entriesBehind(asked, containerId),
  };
  return { ...told, notDetermined: notDeterminedOf(told, doubtfulSince !== null) };
}

/** @param madeBy whose telephone is given before that of others */
export function workshopOf(state: State, madeBy: string | null = null): DisposalContent['workshop'] {
  const told = state.workshop?.body;
  const { authority, collector } = told ?? {};
  return {
    name: told?.name ?? notDetermined,
    address: told?.address ?? notDetermined,
    generatorNumber: told?.generatorNumber ?? notDetermined,
    emergencyNumber: told?.emergencyNumber ?? notDetermined,
    telephone: telephoneOf({ state, madeBy }),
    authority: authority ? w.contact(authority.name, authority.contact) : notDetermined,
    collector: collector ? w.contact(collector.name, collector.contact) : notDetermined,
    collectorLicence: collector?.licence ?? notDetermined,
    hazardousWasteCounter: told?.hazardousWasteCounter ?? notDetermined,
  };
}

function ruleValue({ state, sign }: Asked, rule: RuleName): string {
  const stated = state.rules.get(rule)?.body.stated;
  if (!stated) return notDetermined;
  switch (stated.rule) {
    case 'treatment-allowed':
      return w[stated.value];
    case 'fill-limit':
      return `${formatWritten(stated.value, sign)}${thin}%`;
    case 'storage-days':
    case 'inspection-days':
    case 'near-work-days':
    case 'proof-days':
      return w.daysText(formatWritten(stated.value, sign));
    case 'laws':
      return stated.value.map((law) => lawNames[law]).join(', ');
    case 'generator-category':
      return stated.value;
    case 'month-limit':
    case 'on-site-limit':
    case 'near-work-limit':
    case 'retention-years':
      return `${formatWritten(stated.value, sign)}${thin}${stated.value.unit}`;
    case 'discharge-limits':
      return Object.entries(stated.value)
        .map(([metal, most]) => `${metal} ${formatWritten(most, sign)}${thin}${most.unit}`)
        .join(', ');
    case 'discharge-ph':
      return w.phBetween(formatWritten(stated.value.low, sign), formatWritten(stated.value.high, sign));
  }
}

/** Who has no authorised discharge has no rule for it either: nothing is missing then. */
const onlyIfStated: ReadonlySet<RuleName> = new Set<RuleName>(['discharge-limits', 'discharge-ph']);

const localRulesOf = (asked: Asked): DisposalContent['localRules'] =>
  (Object.keys(ruleNames) as RuleName[]).flatMap((rule) => {
    const told = asked.state.rules.get(rule)?.body;
    if (!told && onlyIfStated.has(rule)) return [];
    return {
      rule: ruleNames[rule],
      value: ruleValue(asked, rule),
      saidBy: told?.saidBy ?? notDetermined,
      saidOn: told?.saidOn ?? notDetermined,
      document: told?.document ?? notDetermined,
    };
  });

function treatmentOf({ rules }: State): string {
  const rule = rules.get('treatment-allowed')?.body;
  if (!rule) return w.treatmentOpen;
  return rule.stated.value === 'yes'
    ? w.treatmentAllowed(rule.saidBy, calendarDayText(rule.saidOn))
    : w.treatmentNot;
}

/**
 * Everything that a disposal paper for these containers says, in the order asked for.
 * @param tell how many containers are gathered
 * @throws when none of the containers is in the record, or the record is empty
 */
export function disposalData(
  containerIds: readonly string[],
  asked: SetAsked,
  tell: Tell = untold,
): DisposalData {
  const { state, now, zone, madeBy, demo } = asked;
  const lines = workedLines(asked.sign);
  const ids = [...new Set(containerIds)];
  const held = ids.flatMap((id) => {
    const container = state.containers.get(id);
    return container ? [{ container, amounts: amountsIn(state, container) }] : [];
  });
  const containers = held.map(({ container, amounts }, done) => {
    tell({ stage: 'gathering', done, of: held.length });
    return containerData(asked, lines, container, amounts);
  });
  const last = state.log.at(-1);
  const load = loadOf(held, lines);
  if (containers.length === 0 || !last) throw new Error('a disposal paper needs a container of the record');
  return sealed({
    v: 1,
    kind: 'disposal-paper',
    language: 'en',
    demo,
    madeAt: now,
    zone,
    madeBy: madeBy ?? notDetermined,
    workshop: workshopOf(state, madeBy),
    localRules: localRulesOf(asked),
    treatment: treatmentOf(state),
    cautions: [...w.cautions],
    load,
    apart: apartTold(state, ids),
    statement: statementOf(asked, containers, lines.lines, asked.signature ?? null),
    emergency: emergencyOf(
      asked,
      held.map(({ container }) => container),
    ),
    containers,
    working: [...lines.lines],
    lastEntry: { number: entriesIn(state), id: last.id, hash: last.hash, writtenAt: last.writtenAt },
  });
}

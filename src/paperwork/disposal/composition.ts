/** What is dissolved, how each amount is known, and what neutralising it would take. */

import { basicityStated, purityFrom } from '../../chemistry/basicity';
import { howKnownWords } from '../../chemistry/evidence-words';
import { molarMass } from '../../chemistry/formula';
import type { Amount } from '../../chemistry/load';
import { basesKept } from '../../ledger/bases-kept';
import type { BaseFigures, ContainerFigures } from '../../ledger/container-figures';
import type { BaseDescribed } from '../../ledger/entries/bases';
import { evidenceBehind } from '../../ledger/evidence-behind';
import { over, times } from '../../quantities/expression';
import { type Figure, mostlyKnownBy, workedOut } from '../../quantities/figure';
import { formatWritten, printed } from '../../quantities/format';
import { type BaseId, bases, type Metal, metalSymbols, metals } from '../../reference/tables';
import { dayOf, daysText } from '../dates';
import { capital, notDetermined } from '../words';
import type { Asked } from './asked';
import { dataWords as w } from './data-words';
import type { ContainerData } from './disposal-data';
import { streamText } from './origins';
import { setWords } from './set-words';
import type { WorkedLines } from './worked-lines';

type Substance = ContainerData['substances'][number];
type Evidence = NonNullable<Substance['evidence']>[number];
type BaseLine = ContainerData['bases'][number];

type Known = Pick<Substance, 'howKnown' | 'evidence'>;

/** The evidence that the range of a figure goes back to, each kind with its days: "photometer, 11 May 2026". */
function knownBy({ state, zone }: Asked, figure: Figure, what: Metal | 'acid'): Known {
  const days = new Map<string, readonly string[]>();
  for (const { by, on, at } of evidenceBehind(state, figure, what)) {
    const how = howKnownWords[by] ?? by;
    days.set(how, [...(days.get(how) ?? []), on ?? dayOf(at, zone)]);
  }
  if (days.size === 0) return { howKnown: howKnownWords[mostlyKnownBy(figure)] ?? figure.how };
  const evidence = [...days].map(([how, on]): Evidence => ({ how, on: [...new Set(on)].sort() }));
  return { howKnown: evidence.map(({ how, on }) => w.evidenceOn(how, daysText(on))).join('; '), evidence };
}

const namesOf = ({ state }: Asked, streamIds: readonly string[]): string[] => [
  ...new Set(streamIds.map((id) => streamText(state, id))),
];

type Found = {
  readonly all: Amount<'g'> | Amount<'mol'>;
  readonly perLitre: Figure | undefined;
  /** Formula of what is counted in mol. */
  readonly counted?: string;
};

/** Of all that is in the container; undefined where either is not determined. */
function byMass(name: string, { all, counted }: Found, mass: Figure<'kg'> | null): Figure<'%'> | undefined {
  const { figure } = all;
  if (!figure || mass === null) return undefined;
  const grams = counted === undefined ? figure : times(figure, molarMass(counted));
  return workedOut({ sentence: setWords.shareOf(name.toLowerCase()), unit: '%', formula: over(grams, mass) });
}

function substance(
  asked: Asked,
  lines: WorkedLines,
  containerId: string,
  name: string,
  symbol: string,
  found: Found,
  mass: Figure<'kg'> | null,
  known: (figure: Figure) => Known,
): Substance {
  const { all, perLitre } = found;
  const share = byMass(name, found, mass);
  return {
    name,
    symbol,
    aLitre: perLitre ? lines.of(perLitre, containerId) : notDetermined,
    inAll: all.figure ? lines.of(all.figure, containerId) : notDetermined,
    byMass: share ? lines.of(share, containerId) : notDetermined,
    ...(all.figure ? known(all.figure) : { howKnown: notDetermined }),
    notToldBy: namesOf(asked, all.openIn),
  };
}

/** Every metal of the table, copper and nickel first, then free acid and nitrate. */
export function substancesOf(
  asked: Asked,
  lines: WorkedLines,
  containerId: string,
  figures: ContainerFigures,
  mass: Figure<'kg'> | null,
): Substance[] {
  const each = metalSymbols.map((metal) => {
    const found = figures.metals.find((m) => m.metal === metal);
    const all = { ...(found?.all ? { figure: found.all } : {}), openIn: found?.openIn ?? [] };
    return substance(
      asked,
      lines,
      containerId,
      capital(metals[metal].name),
      metal,
      { all, perLitre: found?.perLitre },
      mass,
      (figure) => knownBy(asked, figure, metal),
    );
  });
  const acid = substance(
    asked,
    lines,
    containerId,
    w.freeAcid,
    'HNO3',
    { all: figures.acid, perLitre: figures.acidPerLitre, counted: 'HNO3' },
    mass,
    (figure) => knownBy(asked, figure, 'acid'),
  );
  const nitrate = substance(
    asked,
    lines,
    containerId,
    w.nitrate,
    'NO3-',
    { all: figures.nitrate, perLitre: figures.nitratePerLitre, counted: 'NO3' },
    mass,
    () => ({ howKnown: w.workedFromAbove }),
  );
  return [...each, acid, nitrate];
}

/** A basicity factor is printed as the purity that it stands for, and named beside. */
function percentOf(asked: Asked, base: BaseId, stated: BaseDescribed | undefined): string {
  if (stated?.basicity) {
    const factor = basicityStated({ factor: stated.basicity, origin: `purity/${base}` });
    return printed(purityFrom(base, factor), asked.sign).value;
  }
  return stated?.purity ? formatWritten(stated.purity, asked.sign) : bases[base].purity.value;
}

const saidOf = (asked: Asked, { saidBy, basicity }: BaseDescribed): string =>
  [saidBy ?? w.onTheBag, ...(basicity ? [w.byBasicity(formatWritten(basicity, asked.sign))] : [])].join('; ');

function baseLine(
  asked: Asked,
  lines: WorkedLines,
  containerId: string,
  base: BaseId,
  found: BaseFigures | undefined,
): BaseLine {
  const stated = asked.state.bases.get(base)?.body;
  const of = (figure: Figure | undefined) => (figure ? lines.of(figure, containerId) : notDetermined);
  const gives = Number(bases[base].carbonDioxidePerMol) > 0;
  return {
    base: bases[base].name,
    formula: bases[base].formula,
    purity: {
      percent: percentOf(asked, base, stated),
      saidBy: stated ? saidOf(asked, stated) : w.usualPurity,
    },
    mass: of(found?.needed.mass),
    heat: of(found?.warming?.heat),
    rise: of(found?.warming?.rise),
    sludgeDry: of(found?.sludge?.dry),
    sludgeDrained: of(found?.sludge?.wet),
    carbonDioxide: gives ? of(found?.carbonDioxide) : 'none',
    doesNotBringDown: (found?.needed.leaves ?? []).map((metal) => metals[metal].name),
    notToldBy: namesOf(asked, found?.needed.openIn ?? []),
  };
}

/** The bases that the workshop keeps; "not determined" where the acid is not known or no base may be added. */
export const basesOf = (
  asked: Asked,
  lines: WorkedLines,
  containerId: string,
  figures: ContainerFigures,
): BaseLine[] =>
  basesKept(asked.state).map((base) => baseLine(asked, lines, containerId, base, figures.bases.get(base)));

export function basesNoteOf(figures: ContainerFigures): string {
  if (figures.noBase !== null) return w.noBase[figures.noBase];
  return figures.load ? w.baseNote : w.noBaseNothing;
}

/** Wet solids with the liquor they hold. */
export const residuesOf = (
  asked: Asked,
  lines: WorkedLines,
  containerId: string,
  figures: ContainerFigures,
): ContainerData['residues'] =>
  figures.contents.residues.map(({ streamId, wetMass, held }) => ({
    name: streamText(asked.state, streamId),
    wetMass: lines.of(wetMass, containerId),
    heldLiquor: held ? lines.of(held.volume, containerId) : notDetermined,
  }));

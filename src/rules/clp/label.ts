/**
 * What a label bears for the hazards that a person accepted: pictograms, signal word, statements, and the six precautions
 * that it has room for (CLP Articles 17 to 28). Which precedence holds is the law's; which precautions come first is our choice.
 */

import { sourceOf } from '../../chemistry/constants';
import type { Source } from '../../quantities/figure';
import { clp, type Pictogram } from '../../reference/clp-tables';
import { type StatementCode, statements } from '../../reference/statements-tables';
import { coversHazard, type Hazard } from './hazard';
import type { Supplement } from './supplements';

export type Statement = { readonly code: string; readonly text: string; readonly source: Source };

export type LabelElements = {
  /** In the order of their numbers. */
  readonly pictograms: readonly Pictogram[];
  readonly signalWord: 'Danger' | 'Warning' | null;
  /** Those that the law lets fall away beside another are left off. */
  readonly hazardStatements: readonly Statement[];
  /** EUH statements. */
  readonly supplements: readonly Statement[];
  /** Six at most. */
  readonly precautions: readonly Statement[];
  /** The others that the classes call for. */
  readonly furtherPrecautions: readonly Statement[];
  /** The container must let gas out, so that no statement may tell anybody to close it tight. */
  readonly mustVent: boolean;
};

const { elements, order, covers, statementsCovered, mostPrecautions } = clp.label;

const elementOf = ({ class: name, category, route }: Hazard) =>
  elements.find(
    (e) =>
      e.class === name &&
      e.categories.includes(category) &&
      (!e.routes || (route && e.routes.includes(route))),
  );

/** Of two hazards of one family only the worse one is labelled (Article 26(2)). */
const worst = (hazards: readonly Hazard[]): Hazard[] =>
  hazards.filter(
    (h, at) =>
      !hazards.some((other, i) => i !== at && coversHazard(other, h) && !(coversHazard(h, other) && at < i)),
  );

const isIrritation = ({ class: name }: Hazard): boolean => name === 'Skin Irrit.' || name === 'Eye Irrit.';

/** Article 26(1)(b) to (d). A pictogram falls away for a hazard, not for the label. */
function pictogramsOf(hazards: readonly Hazard[]): Pictogram[] {
  const all = new Set(hazards.map((h) => elementOf(h)?.pictogram));
  const inhalationAllergy = hazards.some((h) => h.class === 'Resp. Sens.');
  const kept = hazards.flatMap((hazard) => {
    const pictogram = elementOf(hazard)?.pictogram;
    if (!pictogram) return [];
    if (pictogram !== 'GHS07') return [pictogram];
    if (all.has('GHS06')) return [];
    if (isIrritation(hazard) && (all.has('GHS05') || inhalationAllergy)) return [];
    if (hazard.class === 'Skin Sens.' && inhalationAllergy) return [];
    return [pictogram];
  });
  return [...new Set(kept)].sort();
}

function signalOf(hazards: readonly Hazard[]): LabelElements['signalWord'] {
  const signals = hazards.map((h) => elementOf(h)?.signal);
  if (signals.includes('Danger')) return 'Danger';
  return signals.includes('Warning') ? 'Warning' : null;
}

const isKnown = (code: string): code is StatementCode => Object.hasOwn(statements, code);

/** Throws where the table has no text: every code of a class of substances.json must have one, and a test holds that. */
function statement(code: string): Statement {
  if (!isKnown(code)) throw new Error(`no text for ${code}`);
  const { text, ...told } = statements[code];
  return { code, text, source: sourceOf(told) };
}

type Covers = { readonly code: string; readonly over: readonly string[] };

const uncovered = (codes: readonly string[], by: readonly Covers[]): string[] => {
  const covered = new Set(by.filter(({ code }) => codes.includes(code)).flatMap(({ over }) => over));
  return [...new Set(codes)].filter((code) => !covered.has(code));
};

const named = ({ code, names }: Supplement): Statement => {
  const { text, ...rest } = statement(code);
  return { ...rest, text: text.replace('(name of sensitising substance)', names.join(', ')) };
};

/** Told to close tight what still gives off gas, somebody would burst it: only the ventilated place is left of it. */
const vented = (code: string): string => (code === 'P403+P233' ? 'P403' : code);

export type LabelOptions = {
  readonly supplements?: readonly Supplement[];
  /** It still gives off gas, or nobody determined that it does not. */
  readonly mustVent?: boolean;
};

export function labelElements(
  accepted: readonly Hazard[],
  { supplements = [], mustVent = false }: LabelOptions = {},
): LabelElements {
  const hazards = worst(accepted);
  const asked = hazards.flatMap((h) => elementOf(h)?.precautions ?? []);
  const codes = uncovered(mustVent ? asked.map(vented) : asked, covers);
  const sorted = order.codes.filter((code) => codes.includes(code)).map(statement);
  const room = Number(mostPrecautions.value);
  return {
    pictograms: pictogramsOf(hazards),
    signalWord: signalOf(hazards),
    hazardStatements: uncovered(
      hazards.map((h) => h.code),
      statementsCovered.rows,
    )
      .sort()
      .map(statement),
    supplements: supplements.map(named),
    precautions: sorted.slice(0, room),
    furtherPrecautions: sorted.slice(room),
    mustVent,
  };
}

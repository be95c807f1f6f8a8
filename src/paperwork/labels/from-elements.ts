/** What the rules make of accepted or proposed classes, as a label carries it. */
import type { LabelElements } from '../../rules/clp/label';
import type { LabelHazards, LabelStanding } from './label-data';

/**
 * @param standing whose word the classes are
 * @param indication the hazard in the words that the law asks for: "corrosive", "HP 8 (corrosive)"
 */
export const hazardsFromElements = (
  elements: LabelElements,
  standing: LabelStanding,
  indication: readonly string[],
): LabelHazards => {
  const said = ({ code, text }: LabelElements['hazardStatements'][number]) => ({ code, text });
  return {
    standing,
    signal: elements.signalWord,
    pictograms: elements.pictograms,
    statements: [...elements.hazardStatements, ...elements.supplements].map(said),
    precautions: [...elements.precautions, ...elements.furtherPrecautions].map(said),
    indication,
  };
};

/**
 * What a container's label says, as plain data: whoever draws it adds nothing. What is not known is the text "not
 * determined". Days are calendar days in the zone of the workshop, "2026-05-14".
 */
import type { PictogramId } from './pictograms';

/** Whose words stand on it: the local rules choose. */
export type LabelLaw = 'us' | 'eu';

/** Nobody's word yet, or a named person's. */
export type LabelStanding =
  | { readonly is: 'candidate' }
  | { readonly is: 'confirmed'; readonly by: string; readonly on: string };

/** "H314" with its sentence; without one only the code is printed. */
export type LabelStatement = { readonly code: string; readonly text?: string };

export type LabelHazards = {
  readonly standing: LabelStanding;
  readonly signal: 'Danger' | 'Warning' | null;
  readonly pictograms: readonly PictogramId[];
  /** Hazard statements, the gravest first. */
  readonly statements: readonly LabelStatement[];
  /** Precautionary statements, those that come first first; six at most are printed. */
  readonly precautions: readonly LabelStatement[];
  /** The hazard in the words that the law asks for: "corrosive", "HP 8 (corrosive)". */
  readonly indication: readonly string[];
};

export type CodeList = 'waste-list' | 'rcra' | 'state' | 'transport';

/** A code with whose list it is from: "Waste list", "11 02 07*". */
export type LabelCode = {
  readonly list: CodeList;
  readonly code: string;
  readonly standing: LabelStanding;
};

export type LabelContents =
  | { readonly are: 'known'; readonly name: string; readonly second: string }
  /** Nobody knows for sure what is in it. */
  | { readonly are: 'doubtful'; readonly since: string; readonly byRecord: string }
  | { readonly are: 'none' };

/** When the time began that `mustLeaveBy` ends: by the law, in the store after it stood beside the work, or not yet. */
export type LabelStart = 'accumulation' | 'storage' | 'first-waste';

/**
 * What the United States ask for on a container before it is shipped, besides whose waste it is. Of numbers only those that
 * somebody confirmed; the number of the manifest is on the manifest, and is written in by hand.
 */
export type LabelShipment = {
  readonly manifestNumber: 'to be written in';
  readonly wasteNumbers: readonly LabelCode[] | 'not determined';
};

export type LabelData = {
  readonly containerId: string;
  readonly code: string;
  /** The address that a phone's camera opens. */
  readonly link: string;
  readonly law: LabelLaw | 'not determined';
  readonly contents: LabelContents;
  readonly hazards: LabelHazards | 'not determined';
  readonly codes: readonly LabelCode[];
  /** Lists that the chosen laws go by, of which nobody and no rule has given a code. */
  readonly codesNot: readonly CodeList[];
  /** Set aside to leave, where the law asks for more before it is shipped: a second label. */
  readonly shipment?: LabelShipment;
  /** Whole sentences: "Never add bleach or acid". */
  readonly nevers: readonly string[];
  /** `vented`: it gives off gas and its cap lets it out. `fit-vent`: it gives off gas and the cap is tight. */
  readonly gas: 'none' | 'vented' | 'fit-vent';
  readonly start: string | 'not determined';
  readonly startIs: LabelStart;
  /** The careful last day; no time runs beside the work, and once it is gone. */
  readonly mustLeaveBy: string | 'not determined' | 'no time runs';
};

/** Labels that are printed together. */
export type LabelsContent = {
  readonly v: 1;
  readonly kind: 'container-labels';
  readonly language: 'en';
  readonly demo: boolean;
  readonly madeAt: string;
  readonly zone: string;
  readonly madeBy: string;
  readonly workshop: {
    readonly name: string;
    readonly address: string;
    readonly telephone: string;
    readonly generatorNumber: string;
  };
  readonly labels: readonly LabelData[];
};

/** `contentHash` is the SHA-256 of the canonical JSON (RFC 8785) of everything else. */
export type LabelsData = LabelsContent & { readonly contentHash: string };

/** Why something cannot be written down as it was meant, as a code with its details; the screens hold the words. */

import type { ThingId } from '../safety/must-not-meet/matter';
import type { OwnFault } from '../safety/own-lists';
import type { Body } from './entries/body';
import type { Law } from './entries/local-rules';
import type { Reference } from './references';

type Reason =
  | { readonly code: 'does-not-fit'; readonly details: { readonly path: string; readonly message: string } }
  | { readonly code: 'unknown'; readonly details: { readonly to: Reference['to']; readonly id: string } }
  | { readonly code: 'code-taken'; readonly details: { readonly taken: string } }
  | { readonly code: 'already-written' | 'already-withdrawn'; readonly details: { readonly id: string } }
  | { readonly code: 'already-ended'; readonly details: { readonly stepId: string; readonly at: string } }
  | { readonly code: 'no-clearance'; readonly details: { readonly clearance: string } }
  | { readonly code: 'clearance-stopped'; readonly details: { readonly clearance: string } }
  | {
      readonly code: 'clearance-expired';
      readonly details: { readonly clearance: string; readonly validUntil: string };
    }
  | { readonly code: 'clearance-for-another-step'; readonly details: { readonly step: string } }
  | { readonly code: 'clearance-for-another-batch'; readonly details: { readonly batchId: string | null } }
  | {
      readonly code: 'clearance-for-another-container';
      readonly details: { readonly containerId: string | null };
    }
  /** Something was put into it after its list was gone through. */
  | { readonly code: 'clearance-for-other-contents'; readonly details: { readonly containerId: string } }
  | { readonly code: 'clearance-for-another-place'; readonly details: { readonly stationId: string | null } }
  /** A base that the list was not gone through for. */
  | { readonly code: 'clearance-for-another-base'; readonly details: { readonly base: ThingId } }
  /** Something was begun on it already. */
  | { readonly code: 'clearance-used'; readonly details: { readonly clearance: string } }
  /** Strengths as written. */
  | {
      readonly code: 'clearance-for-other-acid';
      readonly details: { readonly then: string | null; readonly now: string | null };
    }
  | { readonly code: 'list-change-not-in-order'; readonly details: { readonly fault: OwnFault } }
  /** Gone through when the step had begun already. */
  | { readonly code: 'clearance-late'; readonly details: { readonly stepId: string } }
  | { readonly code: 'clearance-of-another-person'; readonly details: { readonly who: string | null } }
  | {
      readonly code: 'container-closed';
      readonly details: { readonly containerId: string; readonly at: string };
    }
  /** `since`: of the mark. */
  | {
      readonly code: 'container-held' | 'container-leaving' | 'container-gone' | 'container-damaged';
      readonly details: { readonly containerId: string; readonly since: string };
    }
  | {
      readonly code: 'finding-closed';
      readonly details: { readonly findingId: string; readonly at: string };
    }
  /** Mixed as planned, a code that one of the two carries would be gone: that is dilution, and no treatment. */
  | {
      readonly code: 'would-dilute';
      readonly details: {
        readonly containerId: string;
        readonly codes: readonly string[];
        readonly laws: readonly Law[];
      };
    }
  | {
      readonly code: 'contents-doubtful';
      readonly details: { readonly containerId: string; readonly since: string };
    }
  /** What the ledger says it holds, L and g as decimals. */
  | {
      readonly code: 'more-than-held';
      readonly details: { readonly containerId: string; readonly volume: string; readonly mass: string };
    }
  /** Something is in it that no logged waste accounts for. */
  | { readonly code: 'contents-unaccounted'; readonly details: { readonly containerId: string } }
  /** Planned to be poured in, or put on it in a treatment. `by`: id of the rule, cell of the chart. */
  | { readonly code: 'must-not-meet'; readonly details: Met }
  | { readonly code: 'must-not-be-treated'; readonly details: Met }
  /** What the container is made of does not stand what is to go in. */
  | {
      readonly code: 'material-does-not-hold';
      readonly details: {
        readonly containerId: string;
        readonly by: string;
        readonly material: ThingId;
        readonly added: ThingId;
      };
    }
  /** By the local rules. */
  | {
      readonly code: 'treatment-not-allowed';
      readonly details: { readonly because: 'not-stated' | 'not-allowed' };
    }
  | {
      readonly code: 'treatment-running';
      readonly details: { readonly containerId: string; readonly treatmentId: string };
    }
  | {
      readonly code: 'treatment-ended';
      readonly details: { readonly treatmentId: string; readonly at: string };
    }
  | { readonly code: 'nothing-to-treat'; readonly details: { readonly containerId: string } }
  /** Volumes in L, as decimals. */
  | { readonly code: 'over-capacity' | 'over-fill-limit'; readonly details: Overfill }
  /** It did not leave with that load. */
  | {
      readonly code: 'not-of-hand-over';
      readonly details: { readonly handOverId: string; readonly containerId: string };
    }
  | { readonly code: 'same-container'; readonly details: { readonly containerId: string } }
  | {
      readonly code: 'another-kind';
      readonly details: { readonly written: Body['kind']; readonly given: Body['kind'] };
    }
  | {
      readonly code: 'another-subject';
      readonly details: { readonly written: string; readonly given: string };
    }
  | { readonly code: 'not-correctable'; readonly details: { readonly kind: Body['kind'] } };

type Met = {
  readonly containerId: string;
  readonly by: string;
  readonly there: ThingId;
  readonly added: ThingId;
};

export type Overfill = { readonly containerId: string; readonly wouldHold: string; readonly limit: string };

/** `field` is the field of the intention that the refusal is about. */
export type Refusal = Reason & { readonly field?: string };

export type Decided =
  | { readonly ok: true; readonly bodies: readonly Body[] }
  | { readonly ok: false; readonly refusal: Refusal };

export const refused = (refusal: Refusal): Decided => ({ ok: false, refusal });
export const written = (...bodies: readonly Body[]): Decided => ({ ok: true, bodies });

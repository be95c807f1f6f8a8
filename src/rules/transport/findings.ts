/** All that the rules of carriage make of one consignment. */
import { aquatic } from './aquatic';
import type { Consignment } from './consignment';
import { corrosiveToMetal, corrosiveToSkin } from './corrosive';
import type { Finding } from './finding';
import { oxidising } from './oxidising';
import { type NamedToxic, namedToxic, toxic } from './toxic';

export type Findings = {
  readonly skin: Finding | null;
  readonly metal: Finding | null;
  readonly oxidising: Finding | null;
  readonly toxic: readonly Finding[];
  readonly namedToxic: readonly NamedToxic[];
  readonly aquatic: Finding | null;
};

export const findingsOf = (consignment: Consignment): Findings => ({
  skin: corrosiveToSkin(consignment),
  metal: corrosiveToMetal(consignment),
  oxidising: oxidising(consignment),
  toxic: toxic(consignment),
  namedToxic: namedToxic(consignment),
  aquatic: aquatic(consignment),
});

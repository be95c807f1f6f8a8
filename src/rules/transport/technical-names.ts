/** The constituents that an n.o.s. name is followed by: no more than two (ADR 3.1.2.8.1). */
import { substances } from '../../reference/substances-tables';
import { type Entry, type TransportClass, transport } from '../../reference/transport-tables';
import { aquaticWeight } from './aquatic';
import { type Consignment, type Part, partsOf } from './consignment';
import { corrosiveGroup } from './corrosive';

const most = 2;

/** What a constituent brings to a class; nothing where it is no part of that hazard. */
function weight(part: Part, of: TransportClass): number {
  const share = part.share.high.toNumber();
  switch (of) {
    case '8':
      return corrosiveGroup(part) || part.as.side ? share : 0;
    case '5.1':
      return part.as.nitrate ? share : 0;
    case '6.1':
      return part.as.toxicAs ? share : 0;
    case '9':
      return aquaticWeight(part);
  }
}

/** The largest first. A trace is not named for a hazard that larger constituents bring. */
function leading(parts: readonly Part[], of: TransportClass): readonly Part[] {
  const brought = parts.filter((part) => weight(part, of) > 0).sort((a, b) => weight(b, of) - weight(a, of));
  if (of === '9') return brought;
  const [first, ...rest] = brought;
  return first ? [first, ...rest.filter(({ share }) => share.high.gte(transport.limits.traces.value))] : [];
}

/** Danger to water and to whoever swallows it goes with corrosion; an oxidiser or class 9 is named by its own alone. */
const addsToHazards = ({ id, share }: Part, entry: Entry): boolean =>
  (entry.class === '8' || entry.class === '6.1') &&
  substances[id].classes.length > 0 &&
  share.high.gte(transport.limits.traces.value);

/**
 * The two constituents that contribute most to the hazards of the entry: of its class first, of its subsidiary hazard next;
 * where one is left to name, the largest of the others.
 * @returns at most two names, each once; none where the entry asks for none or nothing is known
 */
export function technicalNames(entry: Entry, { mixture }: Consignment): readonly string[] {
  if (!entry.technicalNames) return [];
  const parts = partsOf(mixture);
  const [main, ...others] = leading(parts, entry.class);
  const behindSubsidiary = entry.subsidiary.flatMap((of) => leading(parts, of).slice(0, 1));
  const largest = parts.filter((part) => addsToHazards(part, entry));
  const inOrder = [...(main ? [main] : []), ...behindSubsidiary, ...others, ...largest];
  return [...new Set(inOrder.map(({ as }) => as.name))].slice(0, most);
}

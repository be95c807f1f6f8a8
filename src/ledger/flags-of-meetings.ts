/** What stands together and must not, whatever was planned; the emergency card for it. */

import { hasAny, traitsOf } from '../safety/must-not-meet/matter';
import { type Meeting, meetings, meetingsWithin, refusedMeeting } from '../safety/must-not-meet/meetings';
import type { Flag } from './flags';
import { contentsSide, vesselSide } from './meeting-sides';
import type { ContainerState, State } from './state';

const pair = ({ a, b, by, card }: Meeting) => ({ a, b, by, card });

const hangsOnStrength = ({ ruling }: Meeting): boolean =>
  ruling.kind === 'material' && ruling.held.why === 'strength-open';

/** What it is made of, against what stands in it. */
function flagsOfMaterial(state: State, { body, contents }: ContainerState): Flag[] {
  if (contents.length === 0) return [];
  const about = { containerId: body.containerId };
  const inside = contentsSide(state, body.containerId);
  const vessel = vesselSide(body);
  const found = meetings(vessel, inside);
  const refused = refusedMeeting(found);
  if (refused) return [{ pressing: 'now', about, code: 'container-does-not-hold', ...pair(refused) }];
  const acid = inside.some((matter) => hasAny(traitsOf(matter), ['acid']));
  const lacks = vessel.length === 0 ? 'material' : 'strength';
  const open = lacks === 'material' ? acid : found.some(hangsOnStrength);
  return open ? [{ pressing: 'know', about, code: 'material-not-determined', lacks }] : [];
}

export function flagsOfMeetings(state: State, container: ContainerState): Flag[] {
  const { containerId } = container.body;
  const met = refusedMeeting(meetingsWithin(contentsSide(state, containerId)));
  return [
    ...(met
      ? [{ pressing: 'now', about: { containerId }, code: 'met-what-it-must-not', ...pair(met) } as const]
      : []),
    ...flagsOfMaterial(state, container),
  ];
}

/** The emergency card that a flag leads to; null where none fits. */
export function cardOf(flag: Flag): string | null {
  if (flag.code === 'met-what-it-must-not' || flag.code === 'container-does-not-hold') return flag.card;
  return flag.code === 'ammonia-in-treatment' && flag.baseAdded ? 'ammonia-silver' : null;
}

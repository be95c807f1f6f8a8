/** Which things of the trade a list of reactive groups alone could mean: a case names the groups, the app the thing. */
import { groupsOf, type ThingId, thingIds } from '../../src/safety/must-not-meet/matter';

/** Acids, toxic metals: here they stand in water, whether or not a list says so. Lime without water is no ammonia. */
const [water, alwaysInWater] = [106, [1, 2, 24]];

/** Things whose groups all stand in the list and that say most of it: what could be meant by groups alone. */
export function thingsOfGroups(groups: readonly number[]): readonly ThingId[] {
  const listed = (own: readonly number[]) => own.length > 0 && own.every((group) => groups.includes(group));
  const of = (thing: ThingId) => groupsOf({ thing });
  const within = thingIds.filter((thing) => listed(of(thing)));
  const isPartOf = (a: ThingId, b: ThingId): boolean =>
    of(a).length < of(b).length && of(a).every((group) => of(b).includes(group));
  const whole = within.filter((thing) => !within.some((other) => isPartOf(thing, other)));
  const besidesWater = thingIds.filter((thing) => {
    const own = of(thing).filter((group) => group !== water);
    return (
      own.length < of(thing).length &&
      own.length === groups.length &&
      own.some((g) => alwaysInWater.includes(g)) &&
      listed(own)
    );
  });
  return [...new Set([...whole, ...besidesWater])];
}

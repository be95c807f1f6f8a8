/** All that is not determined of a container, gathered from what its paper tells, so that it stands in one place. */
import { notDetermined } from '../words';
import type { ContainerData } from './disposal-data';
import { reportedNow } from './lab-blocks';
import { setWords as w } from './set-words';

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

type Told = Omit<ContainerData, 'notDetermined'>;

function amountsOpen(told: Told): string[] {
  const { substances, ammonia, chloride } = told;
  const reported = reportedNow(told);
  const open = substances
    .filter(({ inAll, symbol }) => inAll === notDetermined && !reported.has(symbol))
    .map(({ name }) => lower(name));
  const tested = [
    ...(ammonia === w.noneLogged ? [] : [w.ammonia]),
    ...(chloride === w.noneLogged ? [] : [w.chloride]),
  ];
  const partly = substances.filter(({ inAll, notToldBy }) => inAll !== notDetermined && notToldBy.length > 0);
  return [
    ...([...open, ...tested].length > 0 ? [w.amountOf([...open, ...tested])] : []),
    ...(partly.length > 0 ? [w.whollyOf(partly.map(({ name }) => lower(name)))] : []),
  ];
}

/** What candidates rest on and nothing above names; what follows from the others once they are told is left out. */
function besides(c: Told): string[] {
  const named = new Set([...c.substances.map(({ name }) => lower(name)), w.ammonia, w.chloride, 'pH']);
  const lacks = (c.laws?.lacking ?? []).flatMap(({ what }) => what);
  const others = [...new Set(lacks)].filter(
    (lack) => !named.has(lack) && !/^HP \d|^names of|^hazardous properties/.test(lack),
  );
  return others.length === 0 ? [] : [w.decides(others)];
}

/** What is asked of the waste as it stands there; of an empty vessel nothing is. */
export function notDeterminedOf(c: Told, doubtful: boolean): string[] {
  if (c.empty) return [];
  const open = (said: string): boolean => said.includes(notDetermined);
  return [
    ...(doubtful ? [w.contents] : []),
    ...amountsOpen(c),
    ...(open(c.ph) ? [w.ph] : []),
    ...(open(c.colour) ? [w.colour] : []),
    ...(open(c.layers) ? [w.layers] : []),
    ...(c.quantity.mass === notDetermined ? [w.mass] : []),
    ...(open(c.material) ? [w.madeOf] : []),
    ...(c.mustLeaveBy === notDetermined ? [w.mustLeave] : []),
    ...c.candidates.filter(({ says }) => open(says)).map(({ what }) => lower(what)),
    ...besides(c),
  ];
}

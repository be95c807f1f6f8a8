/** What is wrong with a container in a long list, in words; told once the page rests, as it takes the chemistry of what is in it. */
import { useEffect, useState } from 'preact/hooks';
import { containersCodedTwice } from '../../ledger/codes-twice';
import { flagsOfContainer } from '../../ledger/flags';
import type { ContainerState, State } from '../../ledger/state';
import type { DecimalSign } from '../../quantities/format';
import { unbroken } from '../../ui/figure-value';
import { idle } from '../../ui/idle';
import { markOf } from '../today/rows';
import { flagWords } from '../today/words';

/** As it was found last, to stand there until it is again. */
const last = new Map<string, string | undefined>();

/** The first thing that its own page marks as wrong; undefined where there is none. */
export function wrongWith(state: State, container: ContainerState, sign: DecimalSign): string | undefined {
  const { code, containerId } = container.body;
  const flag = flagsOfContainer(state, container).find((one) => markOf(one) === 'wrong');
  if (flag) return flagWords(flag, unbroken(code), sign).title;
  if (!containersCodedTwice(state).has(containerId)) return undefined;
  const twice = { pressing: 'soon', about: {}, code: 'code-used-twice', used: unbroken(code) } as const;
  return flagWords(twice, unbroken(code), sign).title;
}

export function useWrong(state: State, container: ContainerState, sign: DecimalSign): string | undefined {
  const { containerId } = container.body;
  const [wrong, setWrong] = useState(last.get(containerId));
  useEffect(
    () =>
      idle(() => {
        const found = container.goneSince === null ? wrongWith(state, container, sign) : undefined;
        last.set(containerId, found);
        setWrong(found);
      }),
    [state, container, containerId, sign],
  );
  return wrong;
}

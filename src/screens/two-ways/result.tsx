/** Both ways side by side: what goes, what it takes, money, month and clock, and what each still is. */

import { dues } from '../../ledger/due';
import { codeOfContainer } from '../../ledger/put-away';
import type { TwoWays } from '../../ledger/two-ways';
import { handingOver, type Said } from '../../reference/handing-over-tables';
import { type BaseId, type Metal, metals } from '../../reference/tables';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { calendarDayText, dayText, streamTitle } from '../amounts';
import { useShell } from '../shell';
import { sourceText } from '../source-text';
import { words } from '../words';
import { type Days, handedLines, moneyLines, monthLines, takenLines } from './lines';
import { SideBySide } from './side-by-side';
import styles from './side-by-side.module.css';
import { twoWaysWords as w } from './words';

type Props = {
  readonly two: TwoWays;
  /** Address of the page, before the name of a figure. */
  readonly here: string;
};

const treatedName = ({ allowed }: TwoWays): string => (allowed === 'yes' ? w.treated : w.planning);

const named = (found: readonly Metal[]): string => w.and(found.map((m) => metals[m].name));

/** Since when the days run and to when, by the careful count: of the container that must leave first. */
function useDays({ about, firstWasteIn }: TwoWays): Days {
  const { state, now, zone } = useShell();
  const first = dues(state.value, now.value, zone).find(
    ({ kind, containerId }) => kind === 'leave' && containerId !== null && about.includes(containerId),
  );
  if (first)
    return { since: calendarDayText(first.from, now.value), last: calendarDayText(first.day, now.value) };
  return { since: firstWasteIn === null ? undefined : dayText(firstWasteIn, now.value), last: undefined };
}

/** What somebody wrote of it, with the source and whether one of us read it there. */
const Saying = ({ said }: { readonly said: Said }) => (
  <p>
    {said.text}
    <span class={styles.source}>{sourceText(said)}</span>
  </p>
);

export function Handed({ two, here }: Props) {
  const { state } = useShell();
  const open = (two.treated?.openIn ?? []).map((id) => streamTitle(state.value, id)).join('; ');
  const treated = treatedName(two);
  const codes = w.and(two.counted.map((id) => unbroken(codeOfContainer(state.value, id) ?? '')));
  return (
    <>
      <Part rule title={w.handed}>
        {open !== '' && (
          <Notice mark="unknown" second={w.missing(open)}>
            {w.atLeast}
          </Notice>
        )}
        <SideBySide label={w.handed} treated={treated} lines={handedLines(two, here)} />
        {two.counted.length > 1 && <p class={styles.note}>{w.countedAre(codes)}</p>}
        {two.residueToo && <p>{w.residueToo}</p>}
      </Part>
      {two.treated && (
        <Part rule title={w.made}>
          <SideBySide label={w.made} treated={treated} lines={takenLines(two, here)} />
        </Part>
      )}
    </>
  );
}

export const MoneyPart = ({ two, here }: Props) => (
  <Part rule title={w.money}>
    <SideBySide label={w.money} treated={treatedName(two)} lines={moneyLines(two, here)} />
    <p class={styles.note}>{w.moneySecond}</p>
  </Part>
);

export function MonthPart({ two, here }: Props) {
  const days = useDays(two);
  return (
    <Part rule title={w.month}>
      <SideBySide label={w.month} treated={treatedName(two)} lines={monthLines(two, here, days)} />
      <p>{w.monthDecides}</p>
      {handingOver.counting.map((said) => (
        <Saying key={said.source} said={said} />
      ))}
      <p>{w.clockSame}</p>
      {handingOver.clock.map((said) => (
        <Saying key={said.source} said={said} />
      ))}
    </Part>
  );
}

export function StillIs({ two, base }: { readonly two: TwoWays; readonly base: BaseId }) {
  const { asItIs, treated } = two;
  return (
    <Part rule title={w.still}>
      {asItIs && <p>{w.liquor(named(asItIs.metals))}</p>}
      {treated &&
        (treated.comesDown.length > 0 ? (
          <p>{w.sludgeIs(named(treated.comesDown), treated.carbonate)}</p>
        ) : (
          <p>{w.sludgeNone}</p>
        ))}
      {treated && <p>{w.filtrateIs(w.salts[base], named(treated.stays))}</p>}
    </Part>
  );
}

export const Cautions = () => (
  <Part rule title={w.cautionsTitle}>
    {w.cautions.map((line) => (
      <p key={line}>{line}</p>
    ))}
    <p>{words.caution}</p>
  </Part>
);

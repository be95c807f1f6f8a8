/** Whether the record is kept, whole and readable. */
import { useEffect, useState } from 'preact/hooks';
import { entriesIn } from '../../ledger/opening';
import { type Verdict, verifyChain } from '../../ledger/verify';
import type { Without } from '../../storage/marker';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { countText } from '../amounts';
import { useGoneOnWithout } from '../keeping/gone-on-without';
import { notWholeWords } from '../keeping/words';
import { useShell } from '../shell';
import { wholeWords as w } from './words';

/** Every hash is worked out again, after the page has been drawn. */
function useVerdict(): Verdict | null {
  const { log } = useShell().state.value;
  const [verdict, setVerdict] = useState<Verdict | null>(null);
  useEffect(() => setVerdict(verifyChain(log)), [log]);
  return verdict;
}

/** Never called whole again: what is here may be as it was written, and something is known to be lost or damaged. */
function WithoutSome({ without }: { readonly without: readonly Without[] }) {
  const { state, lastCheck } = useShell();
  const damaged = without.filter(({ what }) => what === 'entry').length;
  return (
    <Row
      mark={<Mark kind="unknown" />}
      title={damaged === without.length ? w.withDamaged(damaged) : w.without(without.length)}
      second={`${damaged > 0 ? `${notWholeWords.doubt} ` : ''}${w.here(countText(entriesIn(state.value)))} ${lastCheck.value ? w.othersAsWritten : w.othersNotLooked} ${w.withoutWay}`}
      href="#/record/not-whole"
    />
  );
}

/** Of a long record not every entry is at hand: what the last look at all of them found. */
function LongRecord() {
  const { state, lastCheck } = useShell();
  const looked = lastCheck.value;
  return looked ? (
    <Row
      title={w.whole(countText(looked.entries))}
      second={w.wholeSecond}
      start="text"
      href="#/record/history"
    />
  ) : (
    <Row
      title={w.entries(countText(entriesIn(state.value)))}
      second={w.lookedAtSoon}
      start="text"
      href="#/record/verify"
    />
  );
}

/** To be shown only while nothing is wrong that nobody has decided on. */
export function Wholeness() {
  const { state } = useShell();
  const without = useGoneOnWithout();
  if (without.length > 0) return <WithoutSome without={without} />;
  return state.value.earlier === null ? <ShortRecord /> : <LongRecord />;
}

function ShortRecord() {
  const verdict = useVerdict();
  if (!verdict) return <Row title={w.checking} start="text" />;
  if (verdict.whole)
    return verdict.entries === 0 ? (
      <Row title={w.empty} start="text" />
    ) : (
      <Row
        title={w.whole(countText(verdict.entries))}
        second={w.wholeSecond}
        start="text"
        href="#/record/history"
      />
    );
  return (
    <Row
      mark={<Mark kind="wrong" />}
      title={w.wrong(verdict.at + 1)}
      marked
      second={`${w.why[verdict.why.code]} ${w.wrongSecond}`}
      href={verdict.id === null ? undefined : `#/record/entry/${verdict.id}`}
    />
  );
}

export function Unreadable() {
  const { corrupted } = useShell();
  const count = corrupted.value.length;
  if (count === 0) return null;
  return <Row mark={<Mark kind="wrong" />} title={w.unreadable(count)} marked second={w.unreadableSecond} />;
}

/** Whether the record is kept, whole and readable. */
import { useEffect, useState } from 'preact/hooks';
import { type Verdict, verifyChain } from '../../ledger/verify';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { wholeWords as w } from './words';

/** Every hash is worked out again, after the page has been drawn. */
export function useVerdict(): Verdict | null {
  const { log } = useShell().state.value;
  const [verdict, setVerdict] = useState<Verdict | null>(null);
  useEffect(() => setVerdict(verifyChain(log)), [log]);
  return verdict;
}

export function Wholeness() {
  const verdict = useVerdict();
  if (!verdict) return <Row title={w.checking} start="text" />;
  if (verdict.whole)
    return verdict.entries === 0 ? (
      <Row title={w.empty} start="text" />
    ) : (
      <Row title={w.whole(verdict.entries)} second={w.wholeSecond} start="text" href="#/record/history" />
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

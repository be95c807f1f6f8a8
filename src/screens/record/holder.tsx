/** Who holds the phone now: asked once a backup was restored, and told on Today while nobody does. */
import { useEffect } from 'preact/hooks';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { WhoHolds } from '../who-holds';
import { holderWords as w } from '../words';
import { peopleWords } from './words';

const useIsAnybodyHere = (): boolean =>
  [...useShell().state.value.people.values()].some(({ leftAt }) => leftAt === null);

export function HolderScreen() {
  const { go } = useShell();
  const isAnybodyHere = useIsAnybodyHere();
  // Nobody there to be asked for.
  useEffect(() => {
    if (!isAnybodyHere) go('today', 'replace');
  }, [isAnybodyHere, go]);
  return <WhoHolds second={peopleWords.holdsHint} href="#/today" chosen={() => go('today', 'replace')} />;
}

export function NobodyHoldsRow() {
  const { person } = useShell();
  const isAnybodyHere = useIsAnybodyHere();
  if (person.value !== null || !isAnybodyHere) return null;
  return (
    <Row
      mark={<Mark kind="unknown" />}
      title={w.nobodyHolds}
      second={w.nobodyHoldsSecond}
      href="#/record/holder"
    />
  );
}

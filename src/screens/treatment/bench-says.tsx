/** What bench tests say for a container: each in a list, and the newest of each base where nothing else is known. */
import type { BenchTestState, ContainerState, State } from '../../ledger/state';
import type { Figure } from '../../quantities/figure';
import { formatWritten } from '../../quantities/format';
import { bases } from '../../reference/tables';
import { FigureValue } from '../../ui/figure-value';
import { Row, Rows } from '../../ui/row';
import { amountText, momentText, shown } from '../amounts';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { runWords as w } from './run-words';
import { useBench } from './use-bench';
import { treatmentWords } from './words';

type Props = { readonly state: State; readonly containerId: string };
type Said = { readonly test: BenchTestState; readonly mass: Figure<'g'> | undefined };

const workingOf = (containerId: string, entryId: string): string =>
  `#/containers/${containerId}/bench-test/${entryId}`;

function BenchRow({ test, mass, containerId }: Said & { readonly containerId: string }) {
  const { sign, now } = useShell();
  const { body, at, staleSince, entryId } = test;
  const when = momentText(at, now.value);
  const said = staleSince === null ? w.benchForAll : w.benchStale(momentText(staleSince, now.value));
  return (
    <Row
      title={w.benchSaid(
        amountText(body.mass, sign.value),
        bases[body.agent].name.toLowerCase(),
        amountText(body.sampleVolume, sign.value),
        formatWritten(body.endPh, sign.value),
      )}
      second={`${w.benchOpen}, ${when}; ${said}`}
      figure={mass && <FigureValue {...shown(mass, sign.value)} />}
      href={mass ? workingOf(containerId, entryId) : `#/record/entry/${entryId}`}
      equals={mass !== undefined}
    />
  );
}

/** Rows of all that were made, the newest first; to stand in a list. */
export function BenchRows({
  state,
  container,
}: {
  readonly state: State;
  readonly container: ContainerState;
}) {
  const { containerId } = container.body;
  const said = useBench(state, containerId);
  return (
    <>
      {container.benchTests.toReversed().map((test) => (
        <BenchRow key={test.entryId} test={test} mass={said.get(test.entryId)} containerId={containerId} />
      ))}
    </>
  );
}

/** A bench test still holds for this container. */
export const benchHolds = (state: State, containerId: string): boolean =>
  state.containers.get(containerId)?.benchTests.some(({ staleSince }) => staleSince === null) ?? false;

/** The base needed by the newest bench test with each base. */
export function BenchNeeded({ state, containerId }: Props) {
  const { sign } = useShell();
  const said = useBench(state, containerId);
  const tests =
    state.containers.get(containerId)?.benchTests.filter(({ entryId }) => said.has(entryId)) ?? [];
  const newest = new Map(tests.map((test) => [test.body.agent, test]));
  if (newest.size === 0) return null;
  return (
    <Rows>
      {[...newest].map(([base, { entryId, body }]) => {
        const mass = said.get(entryId);
        return (
          mass && (
            <FigureRow
              key={base}
              title={w.benchBase(bases[base].name)}
              second={treatmentWords.byBenchSecond(
                formatWritten(body.endPh, sign.value),
                amountText(body.sampleVolume, sign.value),
              )}
              figure={mass}
              href={workingOf(containerId, entryId)}
            />
          )
        );
      })}
    </Rows>
  );
}

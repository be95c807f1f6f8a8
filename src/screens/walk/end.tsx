/** The end of a walk: how many were seen, what was not, what was found, and by when the next is due. */
import type { WalkState } from '../../ledger/state';
import { walkDue, walkList } from '../../ledger/walks';
import { Button } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { calendarDayText } from '../amounts';
import { ReturnTo, returnDraft } from '../checklist/kept-run';
import { FindingRow } from '../findings/rows';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { MissedRow } from './today-rows';
import { walkWords as w } from './words';

/** Identifiers of what the walk found, the containers' first. */
const foundOn = ({ inspected, finished }: WalkState): readonly string[] =>
  [...inspected, ...(finished ? [finished] : [])].flatMap(({ body }) =>
    body.found.map(({ findingId }) => findingId),
  );

/** On to the list that wanted the walk first. */
function useWayOn(list: string) {
  const { draft, go } = useShell();
  const back = draft.read(returnDraft(list), ReturnTo);
  if (!back) return null;
  return {
    title: back.title,
    go: (): void => {
      draft.drop(returnDraft(list));
      go(back.path, 'replace');
    },
  };
}

export function WalkEnd({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, now, zone } = useShell();
  const walk = state.value.walks.get(at.walk ?? '');
  const wayOn = useWayOn(walk?.finished?.body.list.id ?? '');
  if (!walk?.finished) return <Frame place="today" title={w.end.lost} />;
  const { containerIds, notSeen, list } = walk.finished.body;
  const asked = walkList(state.value);
  const due = walkDue(state.value, now.value, zone);
  const found = foundOn(walk).flatMap((id) => state.value.findings.get(id) ?? []);
  const told = [
    w.end.seen(containerIds.length),
    notSeen.length > 0 ? w.end.notSeen(notSeen.length) : '',
    w.end.found(found.length),
  ];
  return (
    <Frame
      title={asked.mayStart}
      second={`${told.filter(Boolean).join(', ')}.`}
      place="today"
      actions={
        wayOn ? (
          <Button look="primary" onTap={wayOn.go}>
            {w.end.goOn(wayOn.title)}
          </Button>
        ) : (
          <Button look="primary" href="#/today">
            {w.toToday}
          </Button>
        )
      }
    >
      <Part rule width="edge">
        <Rows label={list.title}>
          {notSeen.map(({ containerId, why }) => {
            const container = state.value.containers.get(containerId);
            return container && <MissedRow key={containerId} container={container} why={why} />;
          })}
          {found.map((finding) => (
            <FindingRow key={finding.found.findingId} finding={finding} />
          ))}
          {due && (
            <Row
              mark={<Mark kind="due" share={1} />}
              title={w.end.next}
              second={w.end.every(due.days, due.stated)}
              figure={w.end.by(calendarDayText(due.due, now.value))}
            />
          )}
        </Rows>
      </Part>
      <Part>
        <p>{asked.hang}</p>
        <p>{w.end.caution}</p>
      </Part>
    </Frame>
  );
}

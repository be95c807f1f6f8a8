/** What holds a treatment back, all of it at once, each with the way to make it right. */
import type { Refusal } from '../../ledger/refusal';
import type { ContainerState } from '../../ledger/state';
import type { Readiness } from '../../ledger/treatment-begin';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { returnDraft } from '../checklist/kept-run';
import { partOf } from '../checklist/list-for';
import { hour } from '../frame';
import { useShell } from '../shell';
import { refusalWords } from '../words';
import { runWords as w } from './run-words';

type Props = { readonly container: ContainerState };

/** Nothing makes these right: it is not to be treated here. */
const nevers: readonly Refusal['code'][] = ['must-not-be-treated', 'material-does-not-hold'];

/** Where each fault is made right; undefined where there is no way but to leave it as it is. */
function wayOf({ code, ...rest }: Refusal, id: string): { readonly href: string; readonly words: string } {
  const to = (href: string, way: keyof typeof w.ways) => ({ href: `#/${href}`, words: w.ways[way] });
  switch (code) {
    case 'treatment-not-allowed':
      return to('record/rules/treatment-allowed', 'rule');
    case 'contents-doubtful':
      return to(`containers/${id}/more`, 'known');
    case 'container-closed':
      return to(`containers/${id}/more`, 'reopen');
    case 'nothing-to-treat':
      return to(`containers/${id}/in`, 'fill');
    case 'treatment-running': {
      const { details } = rest as { details: { treatmentId: string } };
      return to(`treatment/${details.treatmentId}`, 'run');
    }
    default:
      return to(`containers/${id}`, 'container');
  }
}

/** Leads to the list, and from its clearance back to this container. */
export function useList({ list }: Readiness, { container }: Props) {
  const { draft, go } = useShell();
  const { containerId, code } = container.body;
  return (): void => {
    if (!list) return;
    draft.keep(returnDraft(list.id), { path: `treatment/begin/${containerId}`, title: w.beginTitle(code) });
    go(`check/${partOf({ batchId: null, containerId })}/${list.id}`);
  };
}

export function Held({ ready, container, onList }: Props & { ready: Readiness; onList: () => void }) {
  const { contents, cleared, clearance } = ready;
  return (
    <Part rule title={w.held} width="edge">
      {contents.length === 0 && !cleared && (
        <Notice
          mark="clearance"
          second={clearance?.body.validUntil ? w.clearedUntil(hour(clearance.body.validUntil)) : undefined}
        >
          {w.heldNone}
        </Notice>
      )}
      <Rows>
        {contents.map((fault) => {
          const way = wayOf(fault, container.body.containerId);
          return (
            <Row
              key={fault.code}
              mark={<Mark kind={nevers.includes(fault.code) ? 'stop' : 'wrong'} />}
              title={refusalWords(fault)}
              second={way.words}
              href={way.href}
            />
          );
        })}
        {cleared && (
          <Row
            mark={<Mark kind="unknown" />}
            title={refusalWords(cleared)}
            second={w.ways.list}
            onTap={onList}
          />
        )}
      </Rows>
    </Part>
  );
}

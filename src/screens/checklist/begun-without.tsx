/** A step that was begun without its list: the record takes the truth, from the choice of steps and not only from a stop. */
import { useState } from 'preact/hooks';
import { isLook } from '../../ledger/step-offers';
import { treatmentStep } from '../../ledger/treatment';
import { workshopLists } from '../../ledger/workshop-lists';
import type { Checklist } from '../../safety/checklist-schema';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { Already } from './already';
import { Nowhere } from './nowhere';
import { PersonFirst } from './person-first';
import { performedFault, words } from './words';

type At = { readonly at: Readonly<Record<string, string>> };

/** What is in a container is treated, not a batch: that is written down on its own page. */
const hrefOf = ({ id, step }: Checklist, batchId: string): string =>
  step === treatmentStep ? '#/treatment/begin' : `#/batches/${batchId}/already/${id}`;

/** Which step it was. */
export function BegunWithout({ at }: At) {
  const { state } = useShell();
  const batch = state.value.batches.get(at.batch ?? '')?.body;
  if (!batch) return <Nowhere>{words.step.noBatch}</Nowhere>;
  const lists = [...workshopLists(state.value).values()].filter((list) => !isLook(list));
  return (
    <Frame
      title={words.step.already}
      second={unbroken(batch.code)}
      ways={[{ label: words.back, href: `#/batches/${batch.batchId}/step` }]}
    >
      <Part width="edge">
        <Rows label={words.step.already}>
          {lists.map((list) => (
            <Row
              key={list.id}
              title={list.title}
              second={list.already}
              start="margin"
              href={hrefOf(list, batch.batchId)}
            />
          ))}
        </Rows>
      </Part>
    </Frame>
  );
}

function Write({ list, batchId }: { readonly list: Checklist; readonly batchId: string }) {
  const { perform, go } = useShell();
  const [fault, setFault] = useState<string | null>(null);
  async function write(happenedAt: string, note: string): Promise<void> {
    const done = await perform(
      {
        do: 'log-step-happened',
        batchId,
        step: list.step,
        clearance: null,
        ...(note === '' ? {} : { note }),
      },
      happenedAt,
    );
    if (done.ok) go(`batches/${batchId}`, 'replace');
    else setFault(performedFault(done));
  }
  return (
    <Already
      title={list.already}
      fault={fault}
      onWrite={(happenedAt, note) => void write(happenedAt, note)}
      onBack={() => go(`batches/${batchId}/already`, 'replace')}
    />
  );
}

/** When it was, and what happened. */
export function BegunWithoutList({ at }: At) {
  const { state } = useShell();
  const list = workshopLists(state.value).get(at.list ?? '');
  if (!list || isLook(list)) return <Nowhere>{words.step.noList}</Nowhere>;
  if (!state.value.batches.has(at.batch ?? '')) return <Nowhere>{words.step.noBatch}</Nowhere>;
  return (
    <PersonFirst>
      <Write list={list} batchId={at.batch ?? ''} />
    </PersonFirst>
  );
}

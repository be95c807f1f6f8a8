/** Making papers: tick the containers, see what is open, choose the sheet, make it. */
import * as z from 'zod/mini';
import { Button } from '../../ui/button';
import { Choices, Tick } from '../../ui/choices';
import { Part } from '../../ui/page';
import { Fault } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { ContainerChoice, OpenRows } from './choice';
import { Made } from './made';
import { openRowsOfPlace } from './open-rows';
import styles from './papers.module.css';
import { usualSheet } from './sheet';
import { PaperUnderWay } from './under-way';
import { useMaking } from './use-making';
import { paperWords as w } from './words';

const Draft = z.object({
  chosen: z.array(z.string()),
  sheet: z.enum(['A4', 'Letter']),
  working: z.boolean(),
});

export function NewPaper({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const { value, change, done } = useForm(`paper-${at.id ?? 'new'}`, Draft, () => ({
    chosen: at.id === undefined ? [] : [at.id],
    sheet: usualSheet(navigator.language),
    working: true,
  }));
  const { make, made, fault, busy, underWay } = useMaking(done);
  const containers = [...state.value.containers.values()].filter(({ contents }) => contents.length > 0);
  const chosen = containers.map(({ body }) => body.containerId).filter((id) => value.chosen.includes(id));
  const { sheet, working } = value;
  const open = openRowsOfPlace(state.value);
  const ways = [{ label: words.back, href: '#/papers' }];
  if (made) return <Made paper={made} />;
  return (
    <Frame
      title={w.newTitle}
      second={w.newSecond}
      ways={ways}
      actions={
        <>
          <Fault words={fault} />
          {underWay ? (
            <PaperUnderWay name={w.making} underWay={underWay} />
          ) : (
            <Button
              look="primary"
              voice="serif"
              disabled={busy || containers.length === 0}
              second={busy ? undefined : chosen.length === 0 ? w.chooseOne : w.makeItSecond(chosen.length)}
              onTap={() =>
                void make({
                  kind: 'disposal',
                  wanted: { containerIds: chosen, sheet, working, labels: false, signature: null },
                })
              }
            >
              {busy ? w.making : w.makeIt}
            </Button>
          )}
        </>
      }
    >
      {containers.length === 0 && (
        <Part>
          <p>{w.noContainers}</p>
        </Part>
      )}
      <ul class={styles.choices}>
        {containers.map((container) => {
          const id = container.body.containerId;
          return (
            <ContainerChoice
              key={id}
              state={state.value}
              container={container}
              chosen={chosen.includes(id)}
              onChoose={(ticked) =>
                change({ chosen: ticked ? [...chosen, id] : chosen.filter((one) => one !== id) })
              }
            />
          );
        })}
      </ul>
      {open.length > 0 && (
        <Part rule title={w.placeTitle} width="edge">
          <OpenRows rows={open} label={w.placeTitle} />
        </Part>
      )}
      <Part rule>
        <Choices
          legend={w.sheet}
          value={sheet}
          choices={(['A4', 'Letter'] as const).map((one) => ({
            value: one,
            label: w.sheets[one],
            second: w.sheetSeconds[one],
          }))}
          onChoose={(one) => change({ sheet: one })}
        />
        <Tick
          label={w.working}
          second={w.workingSecond}
          checked={working}
          onChange={(printed) => change({ working: printed })}
        />
        <p role="status">{busy ? w.making : ''}</p>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

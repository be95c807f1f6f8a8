/**
 * A transfer that is refused: both vessels with a wall between, what would happen, the right place at the thumb. The last
 * door takes the truth: it is written down, and the emergency card for it opens at once.
 */
import { useState } from 'preact/hooks';
import type { ContainerState } from '../../ledger/state';
import { goesWith } from '../../safety/must-not-meet/matter';
import { effectOf } from '../../safety/must-not-meet/words';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { KeptApart } from '../../ui/kept-apart';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { useTapGuard } from '../../ui/tap-guard';
import type { VesselDrawing } from '../../ui/vessel';
import { contentsTitle, heldText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { thingInside, thingName, words } from '../words';
import styles from './apart.module.css';
import type { Refused } from './refused';
import { Rulings } from './ruling';
import { apartWords as w } from './words';

/** One side of it: its code where it stands in a container, and how it is drawn. */
export type SideShown = { readonly code: string | null; readonly drawing: VesselDrawing };

type Props = {
  readonly refused: Refused;
  readonly from: SideShown;
  readonly into: SideShown;
  /** Containers that would take it, the nearest first. */
  readonly places: readonly ContainerState[];
  readonly onPlace: (containerId: string) => void;
  readonly onNew: () => void;
  readonly onAlready: () => void;
  readonly onBack: () => void;
  readonly busy: boolean;
};

/** As many as stand at the thumb with the last door. */
const atThumb = 1;

function titleOf({ refusal }: Refused, from: SideShown, into: SideShown): string {
  const one = from.code === null ? thingName(refusal.details.added) : unbroken(from.code);
  const other = into.code === null ? w.described : unbroken(into.code);
  return refusal.code === 'must-not-meet' ? w.mustNotMeet(one, other) : w.mustNotStand(one, other);
}

/** Names both things, whatever the title calls them. */
function whyOf({ refusal, worst }: Refused, from: SideShown, into: SideShown): string {
  const { added } = refusal.details;
  const other = into.code === null ? w.described : unbroken(into.code);
  const one = from.code === null ? '' : w.is(unbroken(from.code), thingInside(added));
  const two =
    refusal.code === 'must-not-meet'
      ? w.holds(other, thingInside(refusal.details.there))
      : w.isMade(other, thingInside(refusal.details.material));
  return [one, two, worst ? effectOf(worst) : ''].filter(Boolean).join(' ');
}

function Places({ places, onPlace, onNew }: Pick<Props, 'places' | 'onPlace' | 'onNew'>) {
  const { state, sign } = useShell();
  const further = places.slice(atThumb);
  if (places.length === 0) return null;
  return (
    <Part rule title={w.fitsToo} width="edge">
      <Rows>
        {further.map(({ body, holds }) => (
          <Row
            key={body.containerId}
            title={w.putInto(unbroken(body.code))}
            second={contentsTitle(state.value, body.containerId) || w.empty}
            figure={heldText(holds, sign.value)}
            onTap={() => onPlace(body.containerId)}
          />
        ))}
        <Row title={w.newContainer} onTap={onNew} />
      </Rows>
    </Part>
  );
}

export function RefusedTransfer(props: Props) {
  const { refused, from, into, places, onPlace, onNew, onAlready, onBack, busy } = props;
  const { state, moment } = useShell();
  const [ruled, setRuled] = useState(false);
  const guard = useTapGuard(`refused ${ruled}`, moment);
  const title = titleOf(refused, from, into);
  const goes = goesWith(refused.refusal.details.added);
  if (ruled)
    return (
      <Frame
        title={w.ruleTitle}
        second={title}
        focusKey="refused rule"
        ways={[{ label: words.back, onTap: () => setRuled(false) }]}
      >
        <Part width="edge">
          <Rulings meetings={refused.found} />
        </Part>
        <Part rule>
          <p>{words.caution}</p>
        </Part>
      </Frame>
    );
  const [nearest] = places;
  return (
    <Frame
      title={
        <>
          <span class={styles.kicker}>{w.refused}</span>
          {title}
        </>
      }
      above={
        <KeptApart
          from={from.drawing}
          into={into.drawing}
          name={w.drawing(from.code ?? w.noCode, into.code ?? w.described)}
        />
      }
      second={<span class={styles.why}>{whyOf(refused, from, into)}</span>}
      focusKey="refused"
      ways={[
        { label: words.back, onTap: guard(onBack) },
        { label: w.rule, onTap: guard(() => setRuled(true)) },
      ]}
      actions={
        <Buttons>
          {nearest ? (
            <Button
              look="primary"
              second={contentsTitle(state.value, nearest.body.containerId) || w.empty}
              onTap={guard(() => onPlace(nearest.body.containerId))}
            >
              {w.putInto(unbroken(nearest.body.code))}
            </Button>
          ) : (
            <Button look="primary" onTap={guard(onNew)}>
              {w.newContainer}
            </Button>
          )}
          <Button disabled={busy} onTap={guard(onAlready)}>
            {w.already}
          </Button>
        </Buttons>
      }
    >
      {goes && (
        <Part rule title={w.places}>
          <p>{goes.text}</p>
        </Part>
      )}
      <Places places={places} onPlace={onPlace} onNew={onNew} />
    </Frame>
  );
}

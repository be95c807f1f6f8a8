/** A level and the record disagree: what happened. Each answer leads to where it is written down. */

import { isVolume } from '../../ledger/amounts';
import { linesAbout } from '../../ledger/entries-about';
import { type LevelAgainst, levelAgainst } from '../../ledger/level-against';
import { codeOfContainer } from '../../ledger/put-away';
import { toldIn } from '../../ledger/told-lines';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { amountText, heldText } from '../amounts';
import { Frame } from '../frame';
import { Line } from '../record/line';
import { useShell } from '../shell';
import { words } from '../words';
import { doingWords, lifeWords as w } from './life-words';
import { takeOutDraft, takeOutOf } from './take-out';
import { waterDraft } from './water-lost';

type Props = { readonly at: Readonly<Record<string, string>> };

/** The difference goes along into the form that writes it down. */
function useFilledIn(id: string, { gap }: LevelAgainst) {
  const { draft, go } = useShell();
  const amount = { typed: gap.value, unit: gap.unit };
  return {
    water: () => {
      draft.keep(waterDraft(id), { amount, note: '', when: '' });
      go(`containers/${id}/water`);
    },
    taken: () => {
      draft.keep(takeOutDraft(id), takeOutOf(gap, 'spill'));
      go(`containers/${id}/out`);
    },
  };
}

function Reasons({ id, against }: { readonly id: string; readonly against: LevelAgainst }) {
  const filled = useFilledIn(id, against);
  const { less, gap } = against;
  return (
    <Buttons>
      {less && isVolume(gap) && (
        <Button onTap={filled.water} second={doingWords['water-lost'].second}>
          {doingWords['water-lost'].short}
        </Button>
      )}
      {less ? (
        <Button onTap={filled.taken} second={w.whyTakenSecond}>
          {w.whyTaken}
        </Button>
      ) : (
        <Button href={`#/containers/${id}/in`} second={w.whyInSecond}>
          {w.whyIn}
        </Button>
      )}
      <Button href={`#/containers/${id}/level/entry`} second={w.whyEntrySecond}>
        {w.whyEntry}
      </Button>
      <Button href={`#/containers/${id}/mark/contents-doubtful`} second={w.whyNobodySecond}>
        {w.whyNobody}
      </Button>
    </Buttons>
  );
}

export function LevelWhy({ at }: Props) {
  const { state, sign } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const against = container ? levelAgainst(container) : null;
  const level = container?.levels.at(-1);
  const ways = [{ label: words.back, href: `#/containers/${id}` }];
  if (!against || against.agrees || !level) return <Frame title={w.whyNothing} ways={ways} />;
  return (
    <Frame
      title={w.whyTitle(amountText(against.gap, sign.value), against.less)}
      second={w.whySecond(amountText(level.body.level, sign.value), heldText(level.held, sign.value))}
      ways={ways}
      main="spread"
    >
      <Part>
        <Reasons id={id} against={against} />
      </Part>
    </Frame>
  );
}

const amounts: ReadonlySet<string> = new Set([
  'stream-placed',
  'contents-moved',
  'water-lost',
  'level-read',
  'contents-determined',
  'container-opened',
]);

/** The entries that made the record's amount, to correct the one that is wrong. */
export function WhichEntry({ at }: Props) {
  const { state } = useShell();
  const id = at.id ?? '';
  const code = codeOfContainer(state.value, id) ?? '';
  const lines = linesAbout(state.value, { is: 'container', id }).filter(
    ({ body, standing }) => standing !== 'withdrawn' && body !== null && amounts.has(body.kind),
  );
  return (
    <Frame
      title={w.entriesTitle}
      second={unbroken(code)}
      ways={[{ label: words.back, href: `#/containers/${id}/level/why` }]}
    >
      <Part width="edge">
        <Rows>
          {toldIn(state.value, lines)
            .toReversed()
            .map((line) => (
              <Line key={line.entry.id} line={line} />
            ))}
        </Rows>
      </Part>
    </Frame>
  );
}

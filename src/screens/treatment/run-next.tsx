/** What to do at the pot now: wait, read, add the next portion, or stop. Read from the stand. */
import type { ComponentChildren } from 'preact';
import type { NextPortion, Outlook, OutlookFound } from '../../ledger/run-outlook';
import type { TreatmentState } from '../../ledger/state';
import { lastPh } from '../../ledger/treatment';
import { isAtEnd, type Look, minutesTo } from '../../ledger/treatment-run';
import { formatWritten } from '../../quantities/format';
import { FigureValue } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { minutesShown } from '../amounts';
import { hour } from '../frame';
import { useShell } from '../shell';
import styles from './run.module.css';
import { phRange } from './run-figures';
import { gramsText } from './run-plot';
import { runWords as w } from './run-words';

type BigProps = {
  readonly title: string;
  readonly figure?: ComponentChildren;
  readonly children: ComponentChildren;
};

const Big = ({ title, figure, children }: BigProps) => (
  <Part rule>
    <div class={styles.next}>
      <h2>{title}</h2>
      {figure}
    </div>
    {children}
  </Part>
);

const Line = ({ children }: { readonly children: ComponentChildren }) => (
  <p class={styles.lead}>{children}</p>
);

function Waiting({ look }: { readonly look: Look }) {
  const { now } = useShell();
  return (
    <Big
      title={w.wait}
      figure={<FigureValue {...minutesShown(minutesTo(look.due, now.value))} size="main" />}
    >
      <Line>{w.waitText(hour(look.due))}</Line>
      <p class={styles.quiet}>{w.waitAsleep}</p>
    </Big>
  );
}

const ReadNow = ({ look }: { readonly look: Look }) => (
  <Big title={w.readNow} figure={<span class={styles.lead}>{w.readSince(hour(look.due))}</span>}>
    <Line>{look.early ? w.readEarly : w.readNowText}</Line>
  </Big>
);

function Portion({ next, outlook }: { readonly next: NextPortion; readonly outlook: Outlook }) {
  const { sign } = useShell();
  const { expected, kind } = next;
  return (
    <Big
      title={w.next}
      figure={<FigureValue value={gramsText(next.grams, sign.value)} unit="g" size="main" />}
    >
      <Line>
        {w.nextText(outlook.planned.wait.value.toFixed())} {expected && phRange(expected, sign.value)}
      </Line>
      {kind === 'last' && <Line>{w.nextLast}</Line>}
      {outlook.stage.points.length === 0 && <p class={styles.quiet}>{w.firstReading}</p>}
    </Big>
  );
}

type Props = {
  readonly treatment: TreatmentState;
  readonly look: Look | null;
  readonly found: OutlookFound | null;
};

export function Now({ treatment, look, found }: Props) {
  const { now, sign } = useShell();
  const outlook = found?.ok ? found.value : null;
  const last = lastPh(treatment)?.body.ph.value;
  if (look) return look.due > now.value ? <Waiting look={look} /> : <ReadNow look={look} />;
  if (isAtEnd(treatment) && last)
    return (
      <Big title={w.atAim(formatWritten(last, sign.value))}>
        <Line>{w.atAimText}</Line>
      </Big>
    );
  if (outlook && outlook.contradictions.length > 0) return null;
  if (outlook?.next) return <Portion next={outlook.next} outlook={outlook} />;
  return (
    <Big title={found ? w.nothingPlanned : w.coming}>{found && <Line>{w.nothingPlannedText}</Line>}</Big>
  );
}

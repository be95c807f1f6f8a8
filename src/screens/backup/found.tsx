/** A backup that was found whole, and what bringing it in would do to the record here. */
import { useState } from 'preact/hooks';
import { type AboutBackup, isAhead } from '../../storage/backup/about-backup';
import { lackingIn, type RestorePlan } from '../../storage/backup/plan-restore';
import { shortOf } from '../../storage/marker';
import { Button } from '../../ui/button';
import { Tick } from '../../ui/choices';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { Fault } from '../fault';
import { Frame } from '../frame';
import { withoutText } from '../keeping/gone-on-without';
import record from '../record/record.module.css';
import { useShell } from '../shell';
import { words } from '../words';
import type { FoundBackup } from './jobs';
import { restoreWords as w } from './words';

const wrong = <Mark kind="wrong" />;
const unknown = <Mark kind="unknown" />;

/** Of many conflicts, and of many things that are lost, so many are named. */
const mostNamed = 8;

/** What the file is, and what it lacks. */
function AboutRows({ about, now }: { readonly about: AboutBackup; readonly now: string }) {
  const { madeAt, version, workshop, entries, files, newest, damaged, missing, filesMissing, without } =
    about;
  return (
    <Rows>
      <Row start="text" title={w.of(workshop)} second={w.madeAt(momentText(madeAt, now), version)} />
      <Row
        start="text"
        title={w.holds(entries, files)}
        second={newest === null ? undefined : w.newest(momentText(newest, now))}
      />
      {isAhead(about, now) && <Row mark={unknown} title={w.ahead} second={w.aheadSecond} />}
      {damaged > 0 && <Row mark={unknown} title={w.damaged(damaged)} second={w.damagedSecond} />}
      {missing > 0 && <Row mark={unknown} title={w.missing(missing)} second={w.missingSecond} />}
      {filesMissing > 0 && (
        <Row mark={unknown} title={w.filesMissing(filesMissing)} second={w.filesMissingSecond} />
      )}
      {without.slice(0, mostNamed).map((one) => (
        <Row
          key={JSON.stringify(one)}
          mark={unknown}
          title={w.wentOnWithout(withoutText(one))}
          second={w.wentOnSince(momentText(one.at, now))}
        />
      ))}
      {without.length > mostNamed && <Row start="text" title={w.moreWithout(without.length - mostNamed)} />}
    </Rows>
  );
}

const isLacking = ({ lacks }: RestorePlan): boolean => lackingIn(lacks) > 0;

const bringsNothing = ({ fresh, mended, files }: RestorePlan): boolean =>
  fresh + mended + files.fresh + files.mended === 0;

/** @param short entries of which the marker tells, and which are not there after it either */
function PlanRows({ plan, short }: { readonly plan: RestorePlan; readonly short: number }) {
  const { fresh, mended, alreadyHere, here, conflicts, codesTwice, files } = plan;
  if (conflicts.length === 0 && bringsNothing(plan))
    return (
      <Rows>
        <Row start="text" title={w.nothing} />
      </Rows>
    );
  if (conflicts.length > 0)
    return (
      <Rows>
        <Row mark={wrong} marked title={w.conflicts} second={w.conflictsSecond} />
        {conflicts.slice(0, mostNamed).map(({ why, id }) => (
          <Row key={id} start="text" title={w.conflict[why]} second={<span class={record.hash}>{id}</span>} />
        ))}
      </Rows>
    );
  const rows = [
    fresh > 0 && w.fresh(fresh),
    files.fresh > 0 && w.files(files.fresh),
    mended > 0 && w.mended(mended),
    files.mended > 0 && w.filesMended(files.mended),
    alreadyHere > 0 && w.alreadyHere(alreadyHere),
    here > 0 && w.stays(here - mended),
  ].filter((row) => row !== false);
  return (
    <Rows>
      {rows.map((row) => (
        <Row key={row} start="text" title={row} />
      ))}
      {codesTwice.slice(0, mostNamed).map(({ is, code }, at) => (
        <Row
          key={`${is} ${code}`}
          mark={unknown}
          title={w.codeTwice[is](code)}
          second={at === 0 ? w.codeTwiceSecond : undefined}
        />
      ))}
      {codesTwice.length > mostNamed && (
        <Row start="text" title={w.moreCodesTwice(codesTwice.length - mostNamed)} />
      )}
      {isLacking(plan) && (
        <Row mark={unknown} title={w.lacks(lackingIn(plan.lacks))} second={w.lacksSecond} />
      )}
      {short > 0 && <Row mark={unknown} title={w.short(short)} second={w.shortSecond} />}
      {fresh > 0 && here === 0 && <Row start="text" title={w.newName} second={w.newNameSecond} />}
    </Rows>
  );
}

type FoundBackupPageProps = {
  readonly found: FoundBackup;
  readonly fault: string | null;
  readonly bring: () => void;
  readonly leave: () => void;
};

export function FoundBackupPage({
  found: { about, plan, heads },
  fault,
  bring,
  leave,
}: FoundBackupPageProps) {
  const { now, state, marker } = useShell();
  const [sure, setSure] = useState(false);
  const [given, setGiven] = useState(false);
  const isStranger = plan.here > 0 && plan.alreadyHere + plan.mended === 0 && about.entries > 0;
  const isRefused = plan.otherRecord || plan.conflicts.length > 0;
  const does = !isRefused && !bringsNothing(plan);
  return (
    <Frame
      title={about.missing > 0 || isLacking(plan) ? w.lackingTitle : w.foundTitle}
      focusKey="found"
      ways={[{ label: words.back, onTap: leave }]}
      actions={
        does && (
          <>
            <Fault words={fault} />
            <Button
              look="primary"
              voice="serif"
              disabled={(isStranger && !sure) || (isLacking(plan) && !given)}
              onTap={bring}
            >
              {plan.here === 0 ? w.restore : w.join}
            </Button>
          </>
        )
      }
    >
      <Part width="edge">
        <AboutRows about={about} now={now.value} />
      </Part>
      {plan.otherRecord ? (
        <Part rule width="edge">
          <Rows>
            <Row
              mark={wrong}
              marked
              title={w.otherRecord[about.record]}
              second={w.otherRecordSecond[about.record]}
            />
          </Rows>
        </Part>
      ) : (
        <Part rule width="edge" title={w.would}>
          <PlanRows plan={plan} short={shortOf(marker(), heads)} />
        </Part>
      )}
      {does && isLacking(plan) && (
        <Part>
          <Tick label={w.lacksSure} checked={given} onChange={setGiven} />
        </Part>
      )}
      {does && isStranger && (
        <Part rule>
          <Rows>
            <Row
              mark={unknown}
              title={w.stranger}
              second={w.strangerSecond(about.workshop, state.value.workshop?.body.name ?? null)}
            />
          </Rows>
          <Tick label={w.strangerSure} checked={sure} onChange={setSure} />
        </Part>
      )}
    </Frame>
  );
}

/** One entry: what it says, what became of it, its hashes, and the ways to put it right. */
import type { Body } from '../../ledger/entries/body';
import { papersNamed, photosNamed } from '../../ledger/photos-named';
import type { HistoryLine } from '../../ledger/state';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { FileRows } from '../files/file-rows';
import { Frame } from '../frame';
import { PhotoStrip } from '../photos/photo-strip';
import { useShell } from '../shell';
import { SignatureShown } from '../signing';
import { NotAsSealed, useIsUnreadable } from './as-sealed';
import { Changes } from './changes';
import { asSealedWords, deviceName, entryTitle, hashText, momentText, entryWords as w } from './entry-words';
import { keyOf, leavesOf } from './leaves';
import { ownHourText } from './own-hour';
import { inOrder, leafText, partText, worthSaying } from './part-words';
import styles from './record.module.css';
import { useLine } from './use-line';

function Says({ body }: { readonly body: Body }) {
  const { state, sign } = useShell();
  return (
    <dl class={styles.facts}>
      {inOrder(leavesOf(body))
        .filter((leaf) => worthSaying(body, leaf))
        .map((leaf) => (
          <div key={keyOf(leaf.path)}>
            <dt>{partText(body, leaf.path)}</dt>
            <dd>{leafText(state.value, leaf, sign.value)}</dd>
          </div>
        ))}
    </dl>
  );
}

/** Every question as it was asked, with its answer, those of while it ran and after it last. */
function Answers({ body, entryId }: { readonly body: Body; readonly entryId: string }) {
  const { state } = useShell();
  if (body.kind !== 'checklist-finished') return null;
  const later = state.value.checklists.get(entryId)?.later.map((told) => told.body.answer) ?? [];
  return (
    <dl class={styles.facts}>
      {[...body.answers, ...later].map(({ item, ask, answer, unit, at }) => (
        <div key={`${item}${at}`}>
          <dt>{ask}</dt>
          <dd>{unit === undefined ? answer : `${answer}\u2009${unit}`}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Folded away: most people never need it. */
function Hashes({ entry }: Pick<HistoryLine, 'entry'>) {
  const facts = [
    [w.hash, hashText(entry.hash)],
    [w.previous, entry.previous === null ? w.first : hashText(entry.previous)],
    [w.hashWhole, entry.hash],
    [w.entry, entry.id],
    [w.device, `${entry.device}, ${entry.counter}`],
  ] as const;
  return (
    <details class={styles.fold}>
      <summary>
        <span>{w.chain}</span>
      </summary>
      <p>{w.chainSays}</p>
      <dl class={styles.facts}>
        {facts.map(([term, fact]) => (
          <div key={term} class={styles.whole}>
            <dt>{term}</dt>
            <dd class={styles.hash}>{fact}</dd>
          </div>
        ))}
      </dl>
      <Button href="#/record/verify" second={w.chainDoorSecond}>
        {w.chainDoor}
      </Button>
    </details>
  );
}

/** A test for silver has a page of its own, with what each look speaks for. */
const SilverWay = ({ body }: { readonly body: Body }) =>
  body.kind === 'silver-checked' && body.batchId !== null ? (
    <Button href={`#/batches/${body.batchId}/silver-check/${body.checkId}`}>{w.silverCheck}</Button>
  ) : null;

/** A ventilation check has one too, where it is worked out again. */
const VentilationWay = ({ body }: { readonly body: Body }) =>
  body.kind === 'ventilation-checked' ? (
    <Button href={`#/ventilation-checks/${body.checkId}`}>{w.ventilationCheck}</Button>
  ) : null;

/** So has a load, with all that came of it. */
const HandOverWay = ({ body }: { readonly body: Body }) =>
  'handOverId' in body ? <Button href={`#/hand-overs/${body.handOverId}`}>{w.handOver}</Button> : null;

/** As they were given: what was drawn is not told in words. */
function Signed({ body }: { readonly body: Body }) {
  const { generator, collector } = body.kind === 'handed-over' ? body.signatures : {};
  const all = [generator, collector, body.kind === 'paper-made' ? body.signature : undefined];
  return (
    <>
      {all.map((signature) => signature && <SignatureShown key={signature.signedAt} signature={signature} />)}
    </>
  );
}

const isPlain = ({ kind }: Body): boolean => kind !== 'entry-corrected' && kind !== 'entry-withdrawn';

function PutRight({ line }: { readonly line: HistoryLine }) {
  const { id, body } = line.entry;
  if (line.standing === 'withdrawn') return null;
  const plain = isPlain(body);
  return (
    <Buttons>
      {plain && (
        <Button href={`#/record/entry/${id}/correct`} second={w.correctSecond}>
          {w.correct}
        </Button>
      )}
      <Button href={`#/record/entry/${id}/withdraw`} second={plain ? w.withdrawSecond : w.correctionWithdraw}>
        {w.withdraw}
      </Button>
    </Buttons>
  );
}

function NotShown({ id }: { readonly id: string }) {
  const isUnreadable = useIsUnreadable(id);
  return isUnreadable ? (
    <Frame place="record" title={asSealedWords.unreadable} second={asSealedWords.unreadableSecond}>
      <Part>
        <Button href="#/record/restore">{asSealedWords.restore}</Button>
      </Part>
    </Frame>
  ) : (
    <Frame place="record" title={w.gone} />
  );
}

export function EntryScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, sign, whole } = useShell();
  const found = useLine(at.entry ?? '');
  if (found.is === 'reading') return <Frame place="record" title={w.reading} />;
  if (found.is === 'missing') return <NotShown id={at.entry ?? ''} />;
  const { line } = found;
  const { entry, body } = line;
  const title = entryTitle(state.value, entry.body, sign.value);
  const gone = line.standing === 'withdrawn';
  const who = entry.who === null ? undefined : state.value.people.get(entry.who)?.body.name;
  return (
    <Frame
      place="record"
      title={gone ? <s class={styles.gone}>{title}</s> : title}
      second={gone ? w.withdrawnSecond : undefined}
    >
      <NotAsSealed line={line} />
      <Part rule>
        <dl class={styles.facts}>
          <div>
            <dt>{w.happened}</dt>
            <dd>{momentText(line.at)}</dd>
          </div>
          <div>
            <dt>{w.ownHour}</dt>
            <dd>{ownHourText(line.at, entry.zone)}</dd>
          </div>
          <div>
            <dt>{w.written}</dt>
            <dd>{momentText(entry.writtenAt)}</dd>
          </div>
          <div>
            <dt>{w.who}</dt>
            <dd>{who ?? w.nobody}</dd>
          </div>
          <div>
            <dt>{w.on}</dt>
            <dd>{deviceName(entry.device, whole.device)}</dd>
          </div>
        </dl>
      </Part>
      {line.changes.length > 0 && (
        <Part rule title={w.became}>
          <p>
            <Changes line={line} />
          </p>
        </Part>
      )}
      <Part rule title={line.standing === 'corrected' ? w.saysNow : w.says}>
        <Says body={body ?? entry.body} />
        <Answers body={body ?? entry.body} entryId={entry.id} />
        <PhotoStrip photos={photosNamed(body ?? entry.body)} />
        <FileRows files={papersNamed(body ?? entry.body)} />
        <Signed body={body ?? entry.body} />
        <HandOverWay body={body ?? entry.body} />
        <SilverWay body={body ?? entry.body} />
        <VentilationWay body={body ?? entry.body} />
      </Part>
      <Part rule>
        <PutRight line={line} />
        <Hashes entry={entry} />
      </Part>
    </Frame>
  );
}

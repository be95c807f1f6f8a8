/** Something is wrong: which look it is, its answer as the list has it, words and photos to it. */
import { codeOfContainer } from '../../ledger/put-away';
import { looksOf } from '../../ledger/walks';
import type { Item } from '../../safety/checklist-item';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { useTapGuard } from '../../ui/tap-guard';
import { TextField } from '../../ui/text-field';
import { AskedItem } from '../checklist/asked-item';
import { Reason } from '../checklist/further-pages';
import { askedAndSaid, words as listWords, notSo, saidWords, sentence } from '../checklist/words';
import { Fault } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { words } from '../words';
import { WalkPegs } from './container-page';
import { AddedDraft, emptyAdded, type Wrong } from './draft';
import type { WalkOnScreen } from './use-walk';
import styles from './walk.module.css';
import { walkWords as w } from './words';

type Props = { readonly on: WalkOnScreen; readonly wrong: Wrong };

function useCode({ of }: Wrong): string {
  const { state } = useShell();
  return of === null ? '' : unbroken(codeOfContainer(state.value, of) ?? '');
}

/** Which look is not as it should be: several can be told one after the other. */
function WhichLook({ on, wrong }: Props) {
  const { moment } = useShell();
  const code = useCode(wrong);
  const guard = useTapGuard(`which ${wrong.found.length}`, moment);
  const told = new Set(wrong.found.map(({ look }) => look));
  const looks = looksOf(on.list, 'container').filter(({ id }) => !told.has(id));
  return (
    <Frame
      title={w.which}
      voice="question"
      second={code}
      focusKey={`which ${wrong.of} ${wrong.found.length}`}
      above={<WalkPegs on={on} />}
      ways={[
        ...(wrong.found.length > 0
          ? [{ label: w.found.write, strong: true, onTap: guard(() => void on.writeFound(wrong)) }]
          : []),
        { label: wrong.found.length > 0 ? words.cancel : w.back, onTap: on.leaveWrong },
      ]}
      actions={
        <div class={styles.many}>
          {looks.map((item) => (
            <Button key={item.id} onTap={guard(() => on.chooseLook(wrong, item.id))}>
              {item.kind === 'confirm' ? notSo(item.ask) : item.ask}
            </Button>
          ))}
        </div>
      }
    >
      <Part>
        {wrong.found.map(({ findingId, ask, answer }) => (
          <p key={findingId}>{askedAndSaid(ask, sentence(answer))}</p>
        ))}
        {on.fault !== null && <p role="alert">{on.fault}</p>}
      </Part>
    </Frame>
  );
}

/** A look to be confirmed is not as it should be already: only its reason is asked. */
function ReasonOnly({ on, wrong, item }: Props & { readonly item: Item }) {
  const { moment } = useShell();
  const guard = useTapGuard(item.id, moment);
  return (
    <Reason
      title={listWords.reason.title}
      said={listWords.reason.said(item.ask, listWords.no)}
      reasons={item.reasons ?? []}
      guard={guard}
      onBack={() => on.chooseLook(wrong, null)}
      onReason={(reason) => void on.answerWrong(wrong, item, { kind: 'confirm', yes: false, reason })}
    />
  );
}

function Look({ on, wrong, item }: Props & { readonly item: Item }) {
  if (item.kind === 'confirm' && !item.stop) return <ReasonOnly on={on} wrong={wrong} item={item} />;
  return (
    <AskedItem
      key={item.id}
      item={item}
      list={on.list.id}
      seed={on.draft.walkId}
      openedAt={on.draft.openedAt}
      above={<WalkPegs on={on} />}
      ways={[{ label: w.back, onTap: () => on.chooseLook(wrong, null) }]}
      give={(given) => on.answerWrong(wrong, item, given)}
    />
  );
}

/** What was found, with a note and photos; then on. */
function FoundPage({ on, wrong }: Props) {
  const { moment, sign } = useShell();
  const { of, answered } = wrong;
  const form = useForm(`walk/found/${on.draft.walkId}`, AddedDraft, emptyAdded);
  const { field, settled } = usePhotos(form, w.found.photos);
  const code = useCode(wrong);
  const guard = useTapGuard(`found ${answered?.item}`, moment);
  async function keep(more: boolean): Promise<void> {
    const photos = await settled();
    if (photos === null) return;
    if (await on.keepFound(wrong, form.latest().note, [...photos], more)) form.done();
  }
  if (!answered) return null;
  return (
    <Frame
      title={askedAndSaid(answered.ask, saidWords(answered, sign.value))}
      second={code === '' ? w.found.title : code}
      focusKey={`found ${of} ${answered.item}`}
      above={<WalkPegs on={on} />}
      ways={[{ label: w.back, onTap: () => on.chooseLook(wrong, wrong.look) }]}
      actions={
        <Buttons>
          <Button look="primary" disabled={on.busy} onTap={guard(() => void keep(false))}>
            {w.found.write}
          </Button>
          {of !== null && <Button onTap={guard(() => void keep(true))}>{w.found.more}</Button>}
        </Buttons>
      }
    >
      <Part>
        <PhotoField {...field} />
        <TextField
          label={w.found.note}
          value={form.value.note}
          hint={words.optional}
          maxLength={500}
          onInput={(note) => form.change({ note })}
        />
        <Fault words={on.fault} />
      </Part>
    </Frame>
  );
}

export function WrongPage({ on, wrong }: Props) {
  const item = on.list.items.find(({ id }) => id === wrong.look);
  if (wrong.answered) return <FoundPage on={on} wrong={wrong} key={wrong.answered.item} />;
  if (!item) return <WhichLook on={on} wrong={wrong} />;
  return <Look on={on} wrong={wrong} item={item} />;
}

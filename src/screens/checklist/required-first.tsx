/** A list that must be in date before this one: its way leads there, and back here by itself. */
import type { Checklist } from '../../safety/checklist-schema';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import styles from './checklist.module.css';
import { returnDraft } from './kept-run';
import { addressOf, type Going, homeOf } from './list-for';
import { words } from './words';

type Props = Going & { readonly required: Checklist; readonly onAlready: () => void };

export function RequiredFirst({ list, required, what, onAlready }: Props) {
  const { draft, go } = useShell();
  const onTap = (): void => {
    draft.keep(returnDraft(required.id), {
      path: addressOf(list, what),
      title: list.title,
    });
    go(addressOf(required, { batchId: null }));
  };
  return (
    <Frame
      title={words.required.title}
      second={words.required.second(required.title)}
      focusKey="required"
      ways={[{ label: words.required.notNow, href: `#/${homeOf(what)}` }]}
      actions={
        <Buttons>
          <Button look="primary" voice="serif" second={words.required.after} onTap={onTap}>
            {required.title}
          </Button>
          <Button onTap={onAlready}>{list.already}</Button>
        </Buttons>
      }
    >
      <Part>
        <p class={styles.look}>{required.purpose}</p>
      </Part>
    </Frame>
  );
}

/** One photo, as large as the page or as large as it is. */
import { useState } from 'preact/hooks';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { goBack } from '../sos/go-back';
import { words } from '../words';
import styles from './photo.module.css';
import { type Sight, useSights } from './use-sights';
import { photoWords as w } from './words';

const troubles = { missing: w.missing, damaged: w.damaged, 'not-read': w.notRead } as const;

function Seen({ sight, full }: { readonly sight: Sight; readonly full: boolean }) {
  if (sight.state !== 'there')
    return (
      <Part>
        <Notice mark="wrong" role="alert">
          {troubles[sight.state]}
        </Notice>
      </Part>
    );
  return (
    // Scrolls by itself at full size, so a keyboard must be able to stand in it.
    <section class={styles.window} aria-label={w.alone} tabIndex={full ? 0 : undefined}>
      <img class={`${styles.picture} ${full ? styles.full : ''}`} src={sight.url} alt={w.alone} />
    </section>
  );
}

export function PhotoScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { go } = useShell();
  const [full, setFull] = useState(false);
  const hash = at.hash ?? '';
  const sight = useSights([hash]).get(hash);
  return (
    <Frame
      title={w.title}
      ways={[{ label: words.back, onTap: () => goBack(go) }]}
      actions={
        sight?.state === 'there' ? (
          <Button onTap={() => setFull(!full)}>{full ? w.fit : w.full}</Button>
        ) : undefined
      }
    >
      {sight && <Seen sight={sight} full={full} />}
    </Frame>
  );
}

/** What was done about a finding: words, and photos of it now. */

import { useState } from 'preact/hooks';
import * as z from 'zod/mini';
import { Photos } from '../../ledger/entries/photos';
import { Part } from '../../ui/page';
import { PhotoField } from '../../ui/photo-field';
import { useTapGuard } from '../../ui/tap-guard';
import { TextField } from '../../ui/text-field';
import { Fault } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { usePhotos } from '../photos/use-photos';
import { useShell } from '../shell';
import { missing, useTried } from '../tried';
import { words } from '../words';
import { findingWords as w } from './words';

const Draft = z.object({ done: z.string(), photos: Photos });

type Props = {
  readonly findingId: string;
  /** What was found. */
  readonly second: string;
  readonly onBack: () => void;
  /** @returns why it was not written down; null when it was */
  readonly write: (done: string, photos: Photos) => Promise<string | null>;
};

export function DonePage({ findingId, second, onBack, write }: Props) {
  const { moment } = useShell();
  const form = useForm(`finding/${findingId}`, Draft, () => ({ done: '', photos: [] }));
  const { field, settled } = usePhotos(form, w.photosNow);
  const { tried, tryNow } = useTried();
  const [fault, setFault] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const guard = useTapGuard(`done ${findingId}`, moment);
  async function keep(): Promise<void> {
    tryNow();
    const done = form.latest().done.trim();
    if (done === '') return;
    setBusy(true);
    const photos = await settled();
    const why = photos === null ? null : await write(done, [...photos]);
    setBusy(false);
    setFault(why);
    if (photos !== null && why === null) form.done();
  }
  return (
    <Frame
      title={w.doneTitle}
      voice="question"
      second={second}
      focusKey={`done ${findingId}`}
      ways={[
        { label: words.cancel, onTap: onBack },
        { label: w.keep, strong: true, disabled: busy, onTap: guard(() => void keep()) },
      ]}
    >
      <Part>
        <TextField
          label={w.doneLabel}
          kind="lines"
          value={form.value.done}
          hint={w.doneHint}
          error={tried ? missing(form.value.done) : undefined}
          maxLength={500}
          onInput={(done) => form.change({ done })}
        />
        <PhotoField {...field} />
        <Fault words={fault} />
      </Part>
    </Frame>
  );
}

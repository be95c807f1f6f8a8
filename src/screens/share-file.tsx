/** A file that was made here: an address to save it from, and the phone's own list of apps to hand it to. */
import { useEffect, useState } from 'preact/hooks';
import { Button } from '../ui/button';
import { Fault } from './fault';
import { words } from './words';

/** An address for a file while the page stands. */
export function useAddress(file: File): string {
  const [address] = useState(() => URL.createObjectURL(file));
  useEffect(() => () => URL.revokeObjectURL(address), [address]);
  return address;
}

/** Whether this phone can hand the file to another app. */
const canShare = (file: File): boolean => navigator.canShare?.({ files: [file] }) ?? false;

/** Nothing where the phone cannot. */
export function ShareFile({ file }: { readonly file: File }) {
  const [fault, setFault] = useState<string | null>(null);
  if (!canShare(file)) return null;
  async function share(): Promise<void> {
    setFault(null);
    try {
      await navigator.share({ files: [file], title: file.name });
    } catch (cause) {
      // Closing the list of apps is a choice, no fault.
      if (!(cause instanceof DOMException && cause.name === 'AbortError')) setFault(words.share.not);
    }
  }
  return (
    <>
      <Fault words={fault} />
      <Button centred onTap={() => void share()}>
        {words.share.share}
      </Button>
    </>
  );
}

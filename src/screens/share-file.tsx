/** Files that were made here: an address to save one from, and the phone's own list of apps to hand them to. */
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

const canShare = (files: readonly File[]): boolean => navigator.canShare?.({ files: [...files] }) ?? false;

/** Those that this phone hands to other apps: mostly papers and pictures, rarely what only programs read. */
function shareable(files: readonly File[]): readonly File[] {
  const each = files.filter((file) => canShare([file]));
  return canShare(each) ? each : each.slice(0, 1);
}

/** One file, or several that belong together; nothing where the phone cannot. */
export function ShareFiles({
  files,
  shared: told,
}: {
  readonly files: readonly File[];
  /** Hears that an app took them; what it does with them nobody learns. */
  readonly shared?: () => void;
}) {
  const [fault, setFault] = useState<string | null>(null);
  const shared = shareable(files);
  const [first] = shared;
  if (!first) return null;
  async function share(title: string): Promise<void> {
    setFault(null);
    try {
      await navigator.share({ files: [...shared], title });
      told?.();
    } catch (cause) {
      // Closing the list of apps is a choice, no fault.
      if (!(cause instanceof DOMException && cause.name === 'AbortError')) setFault(words.share.not);
    }
  }
  return (
    <>
      <Fault words={fault} />
      <Button centred onTap={() => void share(first.name)}>
        {words.share.share}
      </Button>
    </>
  );
}

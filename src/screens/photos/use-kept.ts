/** Things of a form that lie beside the record by their hash: kept at once one after the other, removed and put back. */
import { useRef, useState } from 'preact/hooks';

type Hashed = { readonly hash: string };

export type KeptList<T extends Hashed> = {
  /** Those in the form at this moment. */
  readonly latest: () => readonly T[];
  readonly change: (all: T[]) => void;
  /** The most of one form. */
  readonly most: number;
  /** Keeps one of what was chosen; words where it could not. */
  readonly keep: (file: File) => Promise<T | string>;
  readonly tooMany: (most: number) => string;
};

/** One after the other: a phone has little memory. */
function useKeeping<T extends Hashed>({ latest, change, most, keep, tooMany }: KeptList<T>) {
  const [keeping, setKeeping] = useState(0);
  const [fault, setFault] = useState<string | null>(null);
  // Between two drawings of the screen only a reference knows what has begun.
  const now = useRef({ keeping: 0, failed: 0, last: Promise.resolve() });
  const count = (more: number): void => {
    now.current.keeping += more;
    setKeeping(now.current.keeping);
  };
  async function keepOne(file: File): Promise<void> {
    try {
      const kept = await keep(file);
      if (typeof kept === 'string') {
        now.current.failed += 1;
        setFault(kept);
        // The same twice is one.
      } else if (latest().every(({ hash }) => hash !== kept.hash)) change([...latest(), kept]);
    } finally {
      count(-1);
    }
  }
  const take = (files: readonly File[]): void => {
    const room = most - latest().length - now.current.keeping;
    setFault(files.length > room ? tooMany(most) : null);
    for (const file of files.slice(0, Math.max(0, room))) {
      count(1);
      const next = () => keepOne(file);
      // One that went wrong keeps no other back.
      now.current.last = now.current.last.then(next, next);
    }
  };
  /** What failed before was told before, and keeps nobody from going on. */
  async function settled(): Promise<boolean> {
    const { failed } = now.current;
    await now.current.last;
    return now.current.failed === failed;
  }
  return { keeping, fault, setFault, take, settled };
}

/** What a field for them shows and hears, and `settled`: all of them once they are kept, or null when one could not be. */
export function useKept<T extends Hashed>(list: KeptList<T>) {
  const { keeping, fault, setFault, take, settled } = useKeeping(list);
  const [removed, setRemoved] = useState<{ readonly one: T; readonly at: number } | null>(null);
  const remove = (gone: string): void => {
    const all = list.latest();
    const at = all.findIndex(({ hash }) => hash === gone);
    const one = all[at];
    if (!one) return;
    setFault(null);
    setRemoved({ one, at });
    list.change(all.filter(({ hash }) => hash !== gone));
  };
  const putBack = (): void => {
    if (!removed) return;
    list.change(list.latest().toSpliced(removed.at, 0, removed.one));
    setRemoved(null);
  };
  const takeNow = (files: readonly File[]): void => {
    setRemoved(null);
    take(files);
  };
  return {
    field: {
      most: list.most,
      onFiles: takeNow,
      onRemove: remove,
      onPutBack: removed ? putBack : undefined,
      keeping,
      error: fault ?? undefined,
    },
    settled: async (): Promise<T[] | null> => ((await settled()) ? [...list.latest()] : null),
  };
}

/** Makes a paper and writes it down. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { useWriting } from '../fault';
import { useShell } from '../shell';
import { type HowFar, howFar, notBegun } from './how-far';
import type { Job } from './jobs';
import {
  type Common,
  failureOf,
  type KeptPaper,
  type Made,
  type MadePaper,
  type Making,
  type PaperFailure,
} from './making';
import { paperWords as w } from './words';

/** So long without a word, ms, and the page says that nothing moves: one container takes a slow phone a second or two. */
const silenceMs = 30_000;

/** Null for what the person chose. */
function failureText(failure: PaperFailure): string | null {
  switch (failure.code) {
    case 'not-loaded':
      return w.notLoaded;
    case 'too-large':
      return w.tooLarge;
    case 'not-made':
      return w.notMade(failure.name);
    case 'cancelled':
      return null;
  }
}

/** What every paper is made of, at the moment of a tap. */
export function useCommon(): () => Common {
  const { record, state, moment, zone, person, sign } = useShell();
  return () => ({
    state: state.value,
    now: moment(),
    zone,
    madeBy: person.value === null ? null : (state.value.people.get(person.value)?.body.name ?? null),
    sign: sign.value,
    demo: record === 'demo',
    appAddress: window.location.href,
  });
}

export type UnderWay = {
  readonly howFar: HowFar;
  /** Nothing was heard for a while. */
  readonly silent: boolean;
  /** Ends it; nothing is written. Null once it is being written down. */
  readonly cancel: (() => void) | null;
};

/** True when `told` has not changed for a while. */
function useSilence(told: unknown): boolean {
  const [silent, setSilent] = useState(false);
  useEffect(() => {
    setSilent(false);
    if (told === null) return;
    const timer = setTimeout(() => setSilent(true), silenceMs);
    return () => clearTimeout(timer);
  }, [told]);
  return silent;
}

/** Papers about a time, for which no container is chosen. */
const ofAll: ReadonlySet<Job['kind']> = new Set<Job['kind']>(['register', 'year']);

/** What the record says of a paper beside its name and hash. */
function recordedOf({ kind, wanted }: Job) {
  if (kind === 'register') return { paper: kind, period: { first: wanted.firstDay, last: wanted.lastDay } };
  if (kind === 'year') return { paper: kind, period: { first: wanted.first, last: wanted.last } };
  if (kind !== 'disposal') return { paper: kind };
  const { labels, signature } = wanted;
  return { paper: kind, ...(labels ? { labels } : {}), ...(signature ? { signature } : {}) };
}

/**
 * Once however often it is tapped. Leaving the page ends what is being made.
 * @param done after it is in the record
 */
export function useMaking(done: () => void) {
  const { makePaper } = useShell();
  const common = useCommon();
  const { write, fault, setFault, busy: writing } = useWriting();
  const [made, setMade] = useState<KeptPaper | null>(null);
  const [told, setTold] = useState<HowFar | null>(null);
  const silent = useSilence(told);
  const making = useRef<Making | null>(null);
  useEffect(() => () => making.current?.cancel(), []);

  async function keep(job: Job, paper: MadePaper): Promise<void> {
    const { contentHash, file, containerIds } = paper;
    const of = {
      containerIds: [...containerIds],
      contentHash,
      fileName: file.name,
      format: 'pdf' as const,
      ...recordedOf(job),
    };
    const [kept] = (await write({ do: 'record-paper', ...of })) ?? [];
    if (kept?.body.kind !== 'paper-made') return;
    done();
    setMade({ ...paper, paperId: kept.body.paperId });
  }

  async function begun(job: Job): Promise<Made> {
    try {
      making.current = makePaper(job, common(), (progress) => setTold(howFar(progress)));
      return await making.current.made;
    } catch (cause) {
      console.warn('the paper was not made', cause);
      return { ok: false, failure: failureOf(cause) };
    }
  }

  async function make(job: Job): Promise<void> {
    if (making.current) return;
    if (!ofAll.has(job.kind) && job.wanted.containerIds.length === 0) return setFault(w.chooseOne);
    setFault(null);
    setTold(notBegun);
    const result = await begun(job);
    if (result.ok) await keep(job, result.paper);
    else setFault(failureText(result.failure));
    making.current = null;
    setTold(null);
  }

  const cancel = writing ? null : (): void => making.current?.cancel();
  const underWay: UnderWay | null = told && { howFar: told, silent, cancel };
  return { make, made, fault, underWay };
}

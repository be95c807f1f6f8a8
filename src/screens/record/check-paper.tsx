/** Whether the entry whose hash stands on a paper is in the book: looked for in all of it. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { hashOn, leastDigits, typedHash } from '../../ledger/paper-hash';
import { type ToldLine, toldLines } from '../../ledger/told-lines';
import type { StoreFailure } from '../../storage/failure';
import type { HowFar } from '../../storage/pages-of-entries';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { ProgressBar } from '../../ui/progress-bar';
import { Rows } from '../../ui/row';
import { TextField } from '../../ui/text-field';
import { countText } from '../amounts';
import { useShell } from '../shell';
import { failureWords } from '../words';
import { percentOf } from './how-far';
import { Line } from './line';
import { verifyWords as w } from './verify-words';

type Answer =
  | { readonly is: 'looking'; readonly howFar: HowFar }
  | { readonly is: 'failed'; readonly failure: StoreFailure }
  | { readonly is: 'none' }
  /** `nth` in the order of the record, from 1. */
  | { readonly is: 'entry' | 'paper'; readonly nth: number; readonly line: ToldLine };

function Answered({ answer }: { readonly answer: Answer }) {
  if (answer.is === 'failed') return <Notice mark="unknown">{failureWords(answer.failure)}</Notice>;
  if (answer.is === 'none')
    return (
      <Notice mark="wrong" second={w.containsNotWhy}>
        {w.containsNot}
      </Notice>
    );
  if (answer.is === 'looking') return null;
  return (
    <>
      <p>
        <strong>{answer.is === 'entry' ? w.contains(countText(answer.nth)) : w.isPaper}</strong>
      </p>
      <p>{answer.is === 'entry' ? w.containsWhole : w.isPaperSecond}</p>
      <Rows>
        <Line line={answer.line} />
      </Rows>
    </>
  );
}

function useLookUp() {
  const { whole } = useShell();
  const [answer, setAnswer] = useState<Answer | null>(null);
  const running = useRef<AbortController | null>(null);
  const stop = () => {
    running.current?.abort();
    setAnswer(null);
  };
  useEffect(() => () => running.current?.abort(), []);
  const lookUp = async (begins: string): Promise<void> => {
    const controller = new AbortController();
    const { signal } = controller;
    running.current = controller;
    setAnswer({ is: 'looking', howFar: { done: 0, of: 1 } });
    let passed = 0;
    let nth = 0;
    let is: 'entry' | 'paper' = 'entry';
    const found = await whole.lookThrough({
      takes: (entry) => {
        passed += 1;
        const on = nth === 0 ? hashOn(entry, begins) : null;
        if (on === null) return false;
        [nth, is] = [passed, on];
        return true;
      },
      tell: (howFar) => {
        if (!signal.aborted) setAnswer({ is: 'looking', howFar });
      },
      signal,
    });
    if (signal.aborted) return;
    if (!found.ok) return setAnswer({ is: 'failed', failure: found.failure });
    const [line] = toldLines(found.value.entries, found.value.changes);
    setAnswer(line ? { is, nth, line } : { is: 'none' });
  };
  return { answer, lookUp, stop };
}

export function CheckPaper() {
  const [typed, setTyped] = useState('');
  const [tried, setTried] = useState(false);
  const { answer, lookUp, stop } = useLookUp();
  const read = typedHash(typed);
  const fault =
    read.ok || !tried ? undefined : read.fault === 'too-short' ? w.tooShort(leastDigits) : w.notHash;
  return (
    <Part rule title={w.paper}>
      <p>{w.paperSecond}</p>
      <TextField
        label={w.hash}
        value={typed}
        hint={w.hashHint(leastDigits)}
        error={fault}
        onInput={(text) => {
          setTyped(text);
          setTried(false);
          stop();
        }}
      />
      {answer?.is === 'looking' ? (
        <>
          <ProgressBar name={w.looking} says={w.looking} percent={percentOf(answer.howFar)} />
          <Button onTap={stop}>{w.stopLooking}</Button>
        </>
      ) : (
        <Button
          onTap={() => {
            setTried(true);
            if (read.ok) void lookUp(read.begins);
          }}
        >
          {w.look}
        </Button>
      )}
      <div role="status">{answer && <Answered answer={answer} />}</div>
    </Part>
  );
}

/** A candidate as a row: whose word there is, its code in plain words, the number against its limit. */
import { wordIn, wordOn } from '../../ledger/candidate-words';
import type { AnswerState, ContainerState } from '../../ledger/state';
import { codeText, meaningOf } from '../../paperwork/candidate-words';
import { groundText } from '../../paperwork/ground-words';
import type { Candidate } from '../../rules/candidate';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { candidateHref } from './addresses';
import { wordMark, wordText } from './word-text';
import { candidateWords as w } from './words';

/** "D002: corrosive"; what no table knows is its code alone. */
export function namedText(candidate: Pick<Candidate, 'scheme' | 'code'>): string {
  const meaning = meaningOf(candidate);
  return meaning === '' ? codeText(candidate.code) : `${codeText(candidate.code)}: ${meaning}`;
}

type Props = { readonly container: ContainerState; readonly candidate: Candidate };

const firstSentence = (text: string): string => /^.*?\.(?= |$)/.exec(text)?.[0] ?? text;

/** What it rests on in one line: its first number, else how the rule begins. */
function useBasis({ grounds, citation }: Candidate): string {
  const { sign } = useShell();
  const [first, ...more] = grounds;
  if (!first) return firstSentence(citation.rule);
  const text = groundText(first, sign.value);
  return more.length === 0 ? text : `${text}, ${w.andMore(more.length)}`;
}

export function CandidateRow({ container, candidate }: Props) {
  const { now } = useShell();
  const word = wordOn(container, candidate);
  const said = wordText(word, now.value);
  const basis = useBasis(candidate);
  // What only came close waits for nobody.
  const quiet = candidate.standing === 'close' && word.is === 'waiting';
  return (
    <Row
      {...(quiet
        ? { start: 'text' as const }
        : { mark: <Mark kind={wordMark[word.is]} word={w.markWord[word.is]} /> })}
      title={namedText(candidate)}
      second={
        <>
          {said !== undefined && <b>{said}. </b>}
          {basis}
        </>
      }
      href={candidateHref(container.body.containerId, candidate)}
      equals={candidate.grounds.length > 0}
    />
  );
}

/** A code that somebody gave and the rules did not propose. */
export function GivenRow({
  container,
  answer,
}: {
  readonly container: ContainerState;
  readonly answer: AnswerState;
}) {
  const { now } = useShell();
  const word = wordIn(answer);
  return (
    <Row
      mark={<Mark kind={wordMark[word.is]} word={w.markWord[word.is]} />}
      title={namedText(answer.body)}
      second={wordText(word, now.value)}
      href={candidateHref(container.body.containerId, answer.body)}
    />
  );
}

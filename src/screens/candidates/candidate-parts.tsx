/** What every candidate's page has: whose word there is, and the numbers against their limits. */
import type { Word } from '../../ledger/candidate-words';
import type { Scheme } from '../../ledger/entries/candidates';
import type { Candidate } from '../../rules/candidate';
import { Button, Buttons } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { FigureRow } from '../figure-row';
import { PhotoStrip } from '../photos/photo-strip';
import { useShell } from '../shell';
import styles from './candidates.module.css';
import { LimitRow } from './limit-row';
import { waitsForText, wordMark, wordText } from './word-text';
import { candidateWords as w } from './words';

export function Said({ word, scheme }: { readonly word: Word; readonly scheme: Scheme }) {
  const { now, state } = useShell();
  const waits = waitsForText(state.value, scheme);
  const body = word.is === 'waiting' ? undefined : word.answer.body;
  const told = [body?.document && w.document(body.document), body?.note].filter(Boolean).join('. ');
  return (
    <Part>
      <Notice mark={wordMark[word.is]} {...(told === '' ? {} : { second: told })}>
        {wordText(word, now.value) ?? waits}
      </Notice>
      <PhotoStrip photos={body?.photos ?? []} />
      {body && (
        <Buttons>
          <Button
            look="plain"
            href={`#/record/entry/${word.is === 'waiting' ? '' : word.answer.entryId}`}
            second={w.entryDoorSecond}
          >
            {w.entryDoor}
          </Button>
        </Buttons>
      )}
    </Part>
  );
}

type NumbersProps = {
  readonly candidate: Candidate;
  /** Address of a figure's working. */
  readonly workingOf: (key: string) => string;
};

export function Numbers({ candidate, workingOf }: NumbersProps) {
  const { grounds, standing } = candidate;
  if (grounds.length === 0)
    return (
      <Part rule title={w.numbers}>
        <p>{standing === 'open' ? w.noNumbersOpen : w.noNumbers}</p>
      </Part>
    );
  return (
    <Part rule title={w.numbers} width="edge">
      <div class={styles.inset}>
        <p class={styles.quiet}>
          {grounds.some(({ end }) => end === 'low') ? w.numbersLow : w.numbersSecond}
        </p>
      </div>
      <Rows label={w.numbers}>
        {grounds.flatMap(({ figure, limit }, at) => [
          <FigureRow
            key={`figure-${at}`}
            title={figure.sentence}
            figure={figure}
            href={workingOf(`figure-${at}`)}
          />,
          <LimitRow key={`limit-${at}`} limit={limit} href={workingOf(`limit-${at}`)} />,
        ])}
      </Rows>
    </Part>
  );
}

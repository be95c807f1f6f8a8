/** Finding something in the record: it answers as one types. */
import { useMemo, useState } from 'preact/hooks';
import { found } from '../../ledger/find';
import type { FoundRow } from '../../ledger/found-rows';
import type { State } from '../../ledger/state';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { TextField } from '../../ui/text-field';
import { countText, dayText } from '../amounts';
import { Frame } from '../frame';
import { LongRows } from '../long-rows';
import { useShell } from '../shell';
import { say } from './say';
import { useIndex } from './use-index';
import { findWords as w } from './words';

/** So many of its words are read in a row. */
const fewWords = 5;

/** Its page, or its history where the state does not hold it any more. */
function hrefOf(state: State, { is, id }: FoundRow): string {
  switch (is) {
    case 'container':
      return state.containers.has(id) ? `#/containers/${id}` : `#/containers/${id}/history`;
    case 'batch':
      return state.batches.has(id) ? `#/batches/${id}` : `#/batches/${id}/history`;
    case 'hand-over':
      return state.handOvers.has(id) ? `#/hand-overs/${id}` : `#/hand-overs/${id}/history`;
    case 'waste':
      return `#/streams/${id}`;
    case 'paper':
      return `#/record/entry/${id}`;
  }
}

function Found({ found: row }: { readonly found: FoundRow }) {
  const { state, now } = useShell();
  const { is, code, words, metals, from, to } = row;
  const [first, ...rest] = words.slice(0, fewWords).map((word) => unbroken(say(word) ?? word));
  const title = code === '' ? `${first ?? w.is[is]}` : unbroken(code);
  const said = code === '' ? rest : [first, ...rest];
  const start = dayText(from, now.value);
  return (
    <Row
      title={title}
      second={[w.is[is], ...said, metals.join(' ')].filter(Boolean).join(', ')}
      figure={to === null ? w.since(start) : w.span(start, dayText(to, now.value))}
      href={hrefOf(state.value, row)}
    />
  );
}

const foundRow = (row: FoundRow) => <Found key={`${row.is} ${row.id}`} found={row} />;

function Answer({ typed }: { readonly typed: string }) {
  const { parts, percent } = useIndex();
  const rows = useMemo(() => found(parts, typed), [parts, typed]);
  const asked = typed.trim() !== '';
  const says =
    percent < 100 && parts.length === 0
      ? w.getting(percent)
      : rows.length > 0
        ? w.found(countText(rows.length))
        : '';
  return (
    <>
      <Part>
        <p role="status">{asked || percent < 100 ? says : ''}</p>
      </Part>
      {asked && percent === 100 && rows.length === 0 && (
        <Rows>
          <Row title={w.nothing} second={w.nothingSecond} />
          <Row title={w.history} second={w.historySecond} href="#/record/history" />
        </Rows>
      )}
      {rows.length > 0 && <LongRows of={rows} row={foundRow} label={w.title} anew />}
    </>
  );
}

/** Holds what is typed, so that a key draws only this and not the frame of the page. */
function Finder() {
  const { here } = useShell();
  const [kept] = useState(here);
  const [typed, setTyped] = useState(() => String(kept.read('typed') ?? ''));
  return (
    <>
      <Part>
        <TextField
          label={w.field}
          value={typed}
          hint={typed === '' ? w.hint : undefined}
          onInput={(text) => {
            kept.keep('typed', text);
            setTyped(text);
          }}
        />
      </Part>
      <Answer typed={typed} />
    </>
  );
}

export const FindScreen = () => (
  <Frame title={w.title}>
    <Finder />
  </Frame>
);

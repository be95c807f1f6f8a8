/** Every entry, newest first, read as it is asked for; what was corrected or withdrawn stays, with what changed. */
import { useState } from 'preact/hooks';
import { Button } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { TextField } from '../../ui/text-field';
import { Frame } from '../frame';
import { HistoryLacks } from '../keeping/gone-on-without';
import { LongRows } from '../long-rows';
import { useShell } from '../shell';
import { failureWords } from '../words';
import { HistoryDoors } from './doors';
import { entryWords as w } from './entry-words';
import { lineRow } from './line';
import { type Pages, usePages } from './use-pages';

function Shown({ pages }: { readonly pages: Pages }) {
  if (pages.state === 'failed')
    return (
      <Part>
        <p role="alert">{failureWords(pages.failure)}</p>
      </Part>
    );
  if (pages.state === 'reading')
    return (
      <Part>
        <p>{w.reading}</p>
      </Part>
    );
  const { lines, unreadable, more } = pages;
  return (
    <>
      <Part rule width="edge">
        <LongRows of={lines} row={lineRow} label={w.historyTitle} />
        <Rows>
          {lines.length === 0 && <Row title={w.none} />}
          {unreadable > 0 && <Row title={w.unreadable(unreadable)} href="#/record" />}
        </Rows>
      </Part>
      {more && (
        <Part>
          <Button onTap={more}>{w.older}</Button>
        </Part>
      )}
    </>
  );
}

export function HistoryScreen() {
  const { here } = useShell();
  const [kept] = useState(here);
  const [day, setDay] = useState(String(kept.read('day') ?? ''));
  const pages = usePages(day);
  return (
    <Frame place="record" title={w.historyTitle} second={w.historySecond}>
      <HistoryLacks />
      <HistoryDoors />
      <Part>
        <TextField
          label={w.fromDay}
          kind="date"
          value={day}
          hint={w.fromDayHint}
          onInput={(typed) => {
            kept.keep('day', typed);
            setDay(typed);
          }}
        />
      </Part>
      <Shown pages={pages} />
    </Frame>
  );
}

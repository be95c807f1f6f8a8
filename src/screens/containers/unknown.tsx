/** Nobody knows what is in it: what to test, in which order, and whom to ask, each with its reason and source. */

import { notDetermined, type ToAsk } from '../../ledger/not-determined';
import { codeOfContainer } from '../../ledger/put-away';
import { sources } from '../../reference/tables';
import type { UnknownTest } from '../../reference/unknown-contents-tables';
import { statusWords } from '../../safety/words';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { telephone } from '../telephone';
import { words } from '../words';
import { askWho, lifeStates, lifeWords as w } from './life-words';
import styles from './unknown.module.css';

type Cited = Pick<UnknownTest, 'source' | 'status' | 'why'>;

const Why = ({ why, source, status }: Cited) => (
  <details class={styles.source}>
    <summary>{w.whySource}</summary>
    <p>{`${why} ${sources[source].title} (${sources[source].edition}): ${statusWords[status]}.`}</p>
  </details>
);

/** Enough digits to be a number that somebody answers. */
const numberIn = (contact: string | undefined): string | undefined =>
  contact?.match(/\+?\d[\d\s()/-]{4,}\d/)?.[0];

function Ask({ one }: { readonly one: ToAsk }) {
  const numbers = one.people.flatMap(({ name, contact }) => {
    const number = numberIn(contact);
    return number === undefined ? [] : [{ name, number }];
  });
  const people = one.people.map(({ name }) => name).join(', ');
  return (
    <li class={styles.item}>
      <b>{people === '' ? askWho[one.who] : `${askWho[one.who]}: ${people}`}</b>
      <p>{one.ask}</p>
      <Why {...one} />
      {numbers.map(({ name, number }) => (
        <Button key={`${name}${number}`} href={telephone(number)} second={number}>
          {w.call(name)}
        </Button>
      ))}
      {numbers.length === 0 && one.who !== 'previous-owner' && <p>{w.noContact}</p>}
    </li>
  );
}

export function UnknownContents({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.id ?? '';
  const code = unbroken(codeOfContainer(state.value, id) ?? '');
  const asked = notDetermined(state.value, id);
  const ways = [{ label: words.back, href: `#/containers/${id}` }];
  if (!asked) return <Frame title={code} second={lifeStates.filling.word} ways={ways} />;
  return (
    <Frame
      title={w.whatIs(code)}
      second={w.whatIsSecond}
      ways={ways}
      actions={
        <Button look="primary" href={`#/containers/${id}/what-it-is`}>
          {w.say}
        </Button>
      }
    >
      <Part rule title={w.ask}>
        <ul class={styles.list}>
          {asked.ask.map((one) => (
            <Ask key={one.who} one={one} />
          ))}
        </ul>
        {!state.value.workshop && (
          <Buttons>
            <Button href="#/record/workshop">{w.describe}</Button>
          </Buttons>
        )}
      </Part>
      <Part rule title={w.tests}>
        <p>{w.stopAt}</p>
        <ol class={styles.list}>
          {asked.tests.map((test, i) => (
            <li key={test.test} class={styles.item}>
              <b>{`${i + 1}. ${test.name}`}</b>
              <p>{test.do}</p>
              <p>{test.shows}</p>
              <Why {...test} />
            </li>
          ))}
        </ol>
      </Part>
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

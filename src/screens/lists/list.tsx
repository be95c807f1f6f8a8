/** One checklist: every question as it is asked, what is our own in it, and what never was amiss. */

import { answersOfList } from '../../ledger/last-gone-through';
import { looksOf } from '../../ledger/walks';
import { changedLists } from '../../ledger/workshop-lists';
import type { Item } from '../../safety/checklist-item';
import { type Checklist, isWalk } from '../../safety/checklist-schema';
import { neverAmiss } from '../../safety/never-amiss';
import type { ChangedList } from '../../safety/own-lists';
import { Button } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { sentence } from '../checklist/words';
import { Before } from '../find/door';
import { Frame } from '../frame';
import { ownFaultWords } from '../own-fault-words';
import { useShell } from '../shell';
import { useItemText } from './item-text';
import { listsWords as w } from './words';

function Question({ list, item }: { readonly list: Checklist; readonly item: Item }) {
  const text = useItemText();
  const loosened = item.kind === 'reading' && item.range === 'loosened';
  return (
    <Row
      {...(loosened ? { mark: <Mark kind="wrong" /> } : { start: 'text' as const })}
      title={item.ask}
      second={sentence(text(item))}
      href={`#/record/lists/${list.id}/${item.id}`}
    />
  );
}

const pauses = ['before', 'during', 'after'] as const;
const looked = ['container', 'place'] as const;

/** The questions by when they are asked; those of the walk by what they are asked of. */
const groupsOf = (list: Checklist) =>
  isWalk(list)
    ? looked.map((what) => ({ title: w.of[what], items: looksOf(list, what) }))
    : pauses.map((pause) => ({
        title: w.when[pause],
        items: list.items.filter(({ when = 'before' }) => when === pause),
      }));

function Questions({ list }: { readonly list: Checklist }) {
  return (
    <>
      {groupsOf(list).map(({ title, items }) => {
        return (
          items.length > 0 && (
            <Part key={title} rule width="edge" title={title}>
              <Rows>
                {items.map((item) => (
                  <Question key={item.id} list={list} item={item} />
                ))}
              </Rows>
            </Part>
          )
        );
      })}
    </>
  );
}

const Lapsed = ({ changed: { list, lapsed } }: { readonly changed: ChangedList }) =>
  lapsed.length === 0 ? null : (
    <Part rule width="edge" title={w.lapsedTitle}>
      <Rows>
        {lapsed.map(({ change, fault }, at) => {
          const id = change.change === 'item-added' ? change.item.id : change.item;
          const ask = list.items.find((item) => item.id === id)?.ask;
          return (
            <Row
              key={`${id} ${at}`}
              mark={<Mark kind="unknown" />}
              title={change.change === 'item-added' ? change.item.ask : (ask ?? id)}
              second={ownFaultWords(fault)}
            />
          );
        })}
      </Rows>
    </Part>
  );

/** What was in order in each of the last ten times: it may only be in the way of the others. */
function Review({ list }: { readonly list: Checklist }) {
  const { state } = useShell();
  const rows = neverAmiss(answersOfList(state.value, list));
  const { earlier } = state.value;
  if (rows.length === 0 && earlier === null) return null;
  return (
    <Part rule width="edge" title={w.review}>
      <Rows>
        {rows.map(({ item, ask, times }) => (
          <Row key={item} start="text" title={ask} second={w.reviewRow(times, earlier !== null)} />
        ))}
      </Rows>
      <Before />
    </Part>
  );
}

export function ListScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const changed = changedLists(state.value).get(at.list ?? '');
  if (!changed) return <Frame place="record" title={w.gone} />;
  const { list } = changed;
  return (
    <Frame
      place="record"
      title={list.title}
      second={`${list.purpose} ${w.versionOf(list.version)}.`}
      actions={
        <Button href={`#/record/lists/${list.id}/add`} second={w.addSecond}>
          {w.add}
        </Button>
      }
    >
      <Questions list={list} />
      <Lapsed changed={changed} />
      <Review list={list} />
    </Frame>
  );
}

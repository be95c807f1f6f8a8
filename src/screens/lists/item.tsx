/** One question of a list: what it asks, what is in order, why, where that comes from, and the ways to change it. */
import { workshopLists } from '../../ledger/workshop-lists';
import type { Item } from '../../safety/checklist-item';
import { statusWords } from '../../safety/words';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { rangeText, sentence } from '../checklist/words';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { shippedOf, useItemText } from './item-text';
import { listsWords as w } from './words';

function Answers({ item }: { readonly item: Item }) {
  const { sign } = useShell();
  if (item.kind === 'reading')
    return (
      <Row
        title={w.range}
        second={
          item.bounds ? w.fromApp : item.range ? w.ours(rangeText(shippedOf(item), sign.value)) : undefined
        }
        figure={rangeText(item, sign.value)}
      />
    );
  if (item.kind === 'confirm') return <Row title={item.yes ?? w.kind.confirm} />;
  return (
    <>
      {item.choices.map(({ answer, stops }) => (
        <Row key={answer} title={sentence(answer)} figure={stops ? w.answerStops : undefined} />
      ))}
    </>
  );
}

export function ListItemScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const text = useItemText();
  const list = workshopLists(state.value).get(at.list ?? '');
  const item = list?.items.find(({ id }) => id === at.item);
  if (!list || !item) return <Frame place="record" title={list ? w.noItem : w.gone} />;
  const here = `#/record/lists/${list.id}/${item.id}`;
  const changeable = item.kind === 'reading';
  return (
    <Frame
      place="record"
      title={item.ask}
      second={sentence(text(item))}
      actions={
        changeable || item.own ? (
          <Buttons>
            {changeable && (
              <Button href={`${here}/range`} second={w.changeSecond}>
                {w.change}
              </Button>
            )}
            {item.own && (
              <Button href={`${here}/drop`} second={w.dropSecond}>
                {w.drop}
              </Button>
            )}
          </Buttons>
        ) : undefined
      }
    >
      <Part rule title={w.look}>
        <p>{item.look}</p>
      </Part>
      <Part rule width="edge" title={w.answers}>
        <Rows>
          <Answers item={item} />
          <Row title={item.stop ? sentence(w.stops) : sentence(w.stopsNot)} />
        </Rows>
      </Part>
      <Part rule>
        <p>{item.why}</p>
      </Part>
      <Part rule title={w.source}>
        <p>{item.source}</p>
        <p>{`${sentence(statusWords[item.status])}.`}</p>
      </Part>
    </Frame>
  );
}

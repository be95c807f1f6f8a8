/** Where one works: the workshop's own stations, or a place that nobody has written down. */
import type { ComponentChildren } from 'preact';
import { asksWhere, type Item } from '../../safety/checklist-item';
import { Button, Buttons } from '../../ui/button';
import { useShell } from '../shell';
import styles from './checklist.module.css';
import type { Guard } from './further-pages';
import { placeWords as w } from './place-words';
import { sentence, words } from './words';

export type WhereAsked = {
  /** Somebody said that it is none of the stations. */
  readonly elsewhere: boolean;
  /** Address of the list behind "check/": there a place that is described now leads back. */
  readonly list: string;
  /** Null: none of them. */
  readonly onStation: (stationId: string | null) => void;
};

const DescribeOne = ({ list }: Pick<WhereAsked, 'list'>) => (
  <Button href={`#/record/stations/new/for/check/${list}`} second={w.describeSecond}>
    {w.describe}
  </Button>
);

/** The stations in use as big answers; the item's own answers stand for a place that is not written down. */
export function Stations(props: {
  readonly item: Item;
  readonly where: WhereAsked;
  readonly guard: Guard;
  readonly children: ComponentChildren;
}) {
  const { item, where, guard, children } = props;
  const { state } = useShell();
  if (!asksWhere(item)) return <>{children}</>;
  const here = [...state.value.stations.values()].filter(({ givenUpAt }) => givenUpAt === null);
  if (here.length === 0 || where.elsewhere)
    return (
      <div class={styles.doors}>
        {children}
        <DescribeOne list={where.list} />
      </div>
    );
  const kindOf = (is: string): string | undefined =>
    item.choices.find(({ station }) => station === is)?.answer;
  return (
    <fieldset class={styles.answers} aria-label={words.answers}>
      <Buttons>
        {here.map(({ body }) => (
          <Button
            key={body.stationId}
            second={sentence(kindOf(body.station.is) ?? '')}
            onTap={guard(() => where.onStation(body.stationId))}
          >
            {body.name}
          </Button>
        ))}
        <Button second={w.elsewhereSecond} onTap={guard(() => where.onStation(null))}>
          {w.elsewhere}
        </Button>
      </Buttons>
    </fieldset>
  );
}

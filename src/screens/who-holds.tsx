/** Asks who holds the phone: the name under everything that is written from then on. */
import { Button, Buttons } from '../ui/button';
import { Part } from '../ui/page';
import { Frame } from './frame';
import { useShell } from './shell';
import { holderWords as w, words } from './words';

type WhoHoldsProps = {
  readonly second: string;
  readonly href: string;
  readonly chosen?: () => void;
};

/** @param href where one goes who does not say */
export function WhoHolds({ second, href, chosen = () => undefined }: WhoHoldsProps) {
  const { state, choosePerson } = useShell();
  const here = [...state.value.people.values()].filter(({ leftAt }) => leftAt === null);
  return (
    <Frame
      title={w.title}
      voice="question"
      second={second}
      focusKey="person"
      ways={[{ label: words.back, href }]}
      actions={
        <Buttons>
          {here.map(({ body }) => (
            <Button
              key={body.personId}
              onTap={() => {
                choosePerson(body.personId);
                chosen();
              }}
            >
              {body.name}
            </Button>
          ))}
          {here.length === 0 ? (
            <Button look="primary" href="#/record/people">
              {w.toRecord}
            </Button>
          ) : (
            <Button href="#/record/people/new">{w.another}</Button>
          )}
        </Buttons>
      }
    >
      {here.length === 0 && (
        <Part>
          <p>{w.nobody}</p>
        </Part>
      )}
    </Frame>
  );
}

/** Asks who holds the phone, once, before anything that a person answers for. */
import type { ComponentChildren } from 'preact';
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from './words';

export function PersonFirst({ children }: { readonly children: ComponentChildren }) {
  const { person, state, choosePerson } = useShell();
  if (person.value !== null) return <>{children}</>;
  const here = [...state.value.people.values()].filter(({ leftAt }) => leftAt === null);
  return (
    <Frame
      title={words.person.title}
      voice="question"
      second={words.person.second}
      focusKey="person"
      ways={[{ label: words.back, href: '#/today' }]}
      actions={
        <Buttons>
          {here.map(({ body }) => (
            <Button key={body.personId} onTap={() => choosePerson(body.personId)}>
              {body.name}
            </Button>
          ))}
          {here.length === 0 && (
            <Button look="primary" href="#/record/people">
              {words.person.toRecord}
            </Button>
          )}
        </Buttons>
      }
    >
      {here.length === 0 && (
        <Part>
          <p>{words.person.nobody}</p>
        </Part>
      )}
    </Frame>
  );
}

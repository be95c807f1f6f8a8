/** Who works here, and who holds the phone now. */
import { Button } from '../../ui/button';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { dayText } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { peopleWords as w } from './words';

export function PeopleScreen() {
  const { state, person, choosePerson, now } = useShell();
  const people = [...state.value.people.values()];
  const here = people.filter(({ leftAt }) => leftAt === null);
  return (
    <Frame
      place="record"
      title={w.title}
      second={w.second}
      actions={
        <Button look="primary" href="#/record/people/new">
          {w.add}
        </Button>
      }
    >
      {here.length > 0 ? (
        <Part rule>
          <Choices
            legend={w.holds}
            hint={w.holdsHint}
            choices={here.map(({ body }) => ({ value: body.personId, label: body.name }))}
            value={person.value ?? undefined}
            onChoose={choosePerson}
          />
        </Part>
      ) : (
        <Part rule>
          <p>{w.none}</p>
        </Part>
      )}
      {people.length > 0 && (
        <Part rule width="edge" title={w.title}>
          <Rows>
            {people.map(({ body, leftAt }) => (
              <Row
                key={body.personId}
                title={body.name}
                second={leftAt === null ? (body.phone ?? w.noPhone) : w.leftSince(dayText(leftAt, now.value))}
                href={`#/record/people/${body.personId}`}
              />
            ))}
          </Rows>
        </Part>
      )}
    </Frame>
  );
}

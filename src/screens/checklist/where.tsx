/** Where the phone is, said or changed before a list asks for it. */
import { Button, Buttons } from '../../ui/button';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { placeWords as w } from './place-words';
import { words } from './words';

export function Where({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, chooseStation, go } = useShell();
  const here = [...state.value.stations.values()].filter(({ givenUpAt }) => givenUpAt === null);
  const back = `batches/${at.batch}/step`;
  const choose = (stationId: string | null): void => {
    chooseStation(stationId);
    go(back, 'replace');
  };
  return (
    <Frame
      title={w.whereTitle}
      voice="question"
      second={w.whereSecond}
      focusKey="where"
      ways={[{ label: words.back, href: `#/${back}` }]}
      actions={
        <Buttons>
          {here.map(({ body }) => (
            <Button key={body.stationId} onTap={() => choose(body.stationId)}>
              {body.name}
            </Button>
          ))}
          {here.length > 0 && (
            <Button second={w.elsewhereSecond} onTap={() => choose(null)}>
              {w.elsewhere}
            </Button>
          )}
          <Button href={`#/record/stations/new/for/${back}`}>{w.describe}</Button>
        </Buttons>
      }
    >
      {here.length === 0 && (
        <Part>
          <p>{w.nowhere}</p>
        </Part>
      )}
    </Frame>
  );
}

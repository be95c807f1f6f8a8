/** Help from every screen: the card most likely to be needed at once, the others one tap away. */
import { emergencyCards } from '../../safety/emergency-cards';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { apartWords } from '../apart/words';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { Card } from './card';
import { goBack } from './go-back';
import styles from './sos.module.css';
import { words } from './words';

/** Every card as a large row. */
function AllCards() {
  const { go } = useShell();
  return (
    <Frame
      title={words.allTitle}
      tone="stop"
      sos={false}
      ways={[{ label: words.back, onTap: () => goBack(go) }]}
    >
      <Part width="edge">
        <div class={styles.rows}>
          <Rows label={words.all}>
            {[...emergencyCards.values()].map(({ id, title }) => (
              <Row key={id} title={title} onTap={() => go(`sos/${id}`, 'replace')} />
            ))}
            <Row title={apartWords.title} second={apartWords.lookUpSecond} href="#/meets" />
          </Rows>
        </div>
      </Part>
    </Frame>
  );
}

export function Sos({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const [first] = emergencyCards.values();
  const card = at.card === undefined ? first : emergencyCards.get(at.card);
  return card ? <Card key={card.id} card={card} then={at.then} /> : <AllCards />;
}

/** Why a question is asked, where that comes from, and how well it is known. */
import type { Item } from '../../safety/checklist-item';
import { safetyWords, statusWords } from '../../safety/words';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import styles from './checklist.module.css';
import { sentence, words } from './words';

export const Why = ({ item, onBack }: { readonly item: Item; readonly onBack: () => void }) => (
  <Frame title={item.ask} focusKey={`why ${item.id}`} ways={[{ label: words.back, onTap: onBack }]}>
    <Part>
      <p class={styles.look}>{item.why}</p>
    </Part>
    <Part title={words.source} rule>
      <p>{item.source}</p>
      <p>{`${sentence(statusWords[item.status])}.`}</p>
    </Part>
    <Part rule>
      <p>{safetyWords.caution}</p>
    </Part>
  </Frame>
);

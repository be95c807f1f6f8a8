/** What this device remembers about how its owner likes things: not part of the record, lost without harm. */
import { effect, signal } from '@preact/signals';
import type { DecimalSign } from '../quantities/format';
import type { Theme } from '../screens/shell';
import type { RecordName } from '../storage/database';

const key = (name: string): string => `leesbook:preference:${name}`;

/** localStorage may be blocked or full: then a preference lasts until the page is closed. */
function quietly<T>(use: () => T): T | null {
  try {
    return use();
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

export const recall = (name: string): string | null => quietly(() => localStorage.getItem(key(name)));
export const remember = (name: string, value: string): void =>
  void quietly(() => localStorage.setItem(key(name), value));
export const forget = (name: string): void => void quietly(() => localStorage.removeItem(key(name)));

const localSign = (): DecimalSign =>
  new Intl.NumberFormat(navigator.language)
    .formatToParts(1.5)
    .some((p) => p.type === 'decimal' && p.value === ',')
    ? ','
    : '.';

const isSign = (text: string | null): text is DecimalSign => text === '.' || text === ',';

const storedSign = recall('decimal-sign');
export const sign = signal<DecimalSign>(isSign(storedSign) ? storedSign : localSign());
export const theme = signal<Theme>(recall('theme') === 'dark' ? 'dark' : 'light');
export const openRecordName = signal<RecordName>(recall('record') === 'demo' ? 'demo' : 'real');

effect(() => {
  document.documentElement.dataset.theme = theme.value;
  remember('theme', theme.value);
});
effect(() => remember('record', openRecordName.value));

export const chooseSign = (chosen: DecimalSign): void => {
  sign.value = chosen;
  remember('decimal-sign', chosen);
};

/** Off until somebody asks for it. */
export const aloud = signal(recall('aloud') === 'yes');
export const chooseAloud = (chosen: boolean): void => {
  aloud.value = chosen;
  remember('aloud', chosen ? 'yes' : 'no');
};

/** Who holds the phone, by record. */
export const personOf = (record: RecordName): string | null => recall(`person:${record}`);

/** Where the phone is, by record. */
export const stationOf = (record: RecordName): string | null => recall(`station:${record}`);

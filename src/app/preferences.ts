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

const isSign = (text: string | null | undefined): text is DecimalSign => text === '.' || text === ',';

/** As the language of the browser writes it: asked once of each, since the first question of a start takes long. */
function localSign(): DecimalSign {
  const [language, known] = recall('sign-of-language')?.split(' ') ?? [];
  if (language === navigator.language && isSign(known)) return known;
  const parts = new Intl.NumberFormat(navigator.language).formatToParts(1.5);
  const asked = parts.some(({ type, value }) => type === 'decimal' && value === ',') ? ',' : '.';
  remember('sign-of-language', `${navigator.language} ${asked}`);
  return asked;
}

const storedSign = recall('decimal-sign');
export const sign = signal<DecimalSign>(isSign(storedSign) ? storedSign : localSign());
const isTheme = (text: string | null): text is Theme =>
  text === 'light' || text === 'dark' || text === 'phone';

const storedTheme = recall('theme');
/** Light where nobody has chosen: it reads best in daylight. */
export const theme = signal<Theme>(isTheme(storedTheme) ? storedTheme : 'light');
export const openRecordName = signal<RecordName>(recall('record') === 'demo' ? 'demo' : 'real');

const darkOnPhone = typeof matchMedia === 'function' ? matchMedia('(prefers-color-scheme: dark)') : null;
const phoneIsDark = signal(darkOnPhone?.matches === true);
darkOnPhone?.addEventListener('change', ({ matches }) => {
  phoneIsDark.value = matches;
});

/** Of the bar that the phone draws above the page: the paper of `ui/tokens.css`. */
const papers = { light: '#fdfdfb', dark: '#0b1211' } as const;

effect(() => {
  const shown = theme.value === 'phone' ? (phoneIsDark.value ? 'dark' : 'light') : theme.value;
  document.documentElement.dataset.theme = shown;
  document.querySelector('meta[name=theme-color]')?.setAttribute('content', papers[shown]);
});
effect(() => remember('theme', theme.value));
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

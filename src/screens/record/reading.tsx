/** How it reads: decimal sign, aloud or not, light or dark. A liking of this phone, not part of the record. */
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { canSpeak } from '../../ui/speak';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { readingWords as w } from './words';

export function ReadingScreen() {
  const { sign, chooseSign, aloud, chooseAloud, theme, chooseTheme } = useShell();
  return (
    <Frame place="record" title={w.title}>
      <Part rule>
        <Choices
          legend={w.sign}
          hint={w.signHint}
          choices={[
            { value: '.', label: w.point },
            { value: ',', label: w.comma },
          ]}
          value={sign.value}
          onChoose={chooseSign}
        />
      </Part>
      <Part rule>
        <Choices
          legend={w.aloud}
          hint={canSpeak() ? w.aloudHint : w.noVoice}
          choices={[
            { value: 'no', label: w.silent },
            { value: 'yes', label: w.readAloud, second: w.readAloudSecond, disabled: !canSpeak() },
          ]}
          value={aloud.value ? 'yes' : 'no'}
          onChoose={(chosen) => chooseAloud(chosen === 'yes')}
        />
      </Part>
      <Part rule>
        <Choices
          legend={w.theme}
          choices={[
            { value: 'light', label: w.light, second: w.lightSecond },
            { value: 'dark', label: w.dark, second: w.darkSecond },
            { value: 'phone', label: w.phone, second: w.phoneSecond },
          ]}
          value={theme.value}
          onChoose={chooseTheme}
        />
      </Part>
    </Frame>
  );
}

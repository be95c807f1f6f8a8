/** How it reads: decimal sign, light or dark. A liking of this phone, not part of the record. */
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { readingWords as w } from './words';

export function ReadingScreen() {
  const { sign, chooseSign, theme, chooseTheme } = useShell();
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
          legend={w.theme}
          choices={[
            { value: 'light', label: w.light, second: w.lightSecond },
            { value: 'dark', label: w.dark, second: w.darkSecond },
          ]}
          value={theme.value}
          onChoose={chooseTheme}
        />
      </Part>
    </Frame>
  );
}

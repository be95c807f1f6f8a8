/** A pair looked up before anything is poured: two things from the lists, and what is known of their meeting. */
import * as z from 'zod/mini';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { goBack } from '../sos/go-back';
import { words } from '../words';
import { type Answer, answerTo, choicesOf, containerValue } from './pair';
import { Rulings } from './ruling';
import { apartWords as w } from './words';

const Draft = z.object({ one: z.string(), other: z.string() });

const marks = {
  refuse: 'stop',
  mind: 'wrong',
  none: 'unknown',
  same: 'unknown',
  unknown: 'unknown',
  unlisted: 'unknown',
} as const;

function Answered({ answer }: { readonly answer: Answer }) {
  const { says, found } = answer;
  const second = says === 'none' ? w.noneSecond : says === 'mind' ? w.mindSecond : undefined;
  return (
    <>
      <Notice mark={marks[says]} second={second}>
        {w.answer[says]}
      </Notice>
      {found.length > 0 && <Rulings meetings={found} />}
    </>
  );
}

export function MeetsScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, go, sign } = useShell();
  const { id } = at;
  const form = useForm(`meets-${id ?? ''}`, Draft, () => ({
    one: id === undefined ? '' : containerValue(id),
    other: '',
  }));
  const { one, other } = form.value;
  const choices = choicesOf(state.value, sign.value);
  const answer = answerTo(state.value, one, other);
  return (
    <Frame
      title={w.title}
      second={w.titleSecond}
      ways={[
        id === undefined
          ? { label: words.back, onTap: () => goBack(go) }
          : { label: words.back, href: `#/containers/${id}` },
      ]}
    >
      <Part>
        <SelectField
          label={w.one}
          value={one === '' ? undefined : one}
          none={words.choose}
          options={choices}
          onChoose={(chosen) => form.change({ one: chosen })}
        />
        <SelectField
          label={w.other}
          value={other === '' ? undefined : other}
          none={words.choose}
          options={choices}
          onChoose={(chosen) => form.change({ other: chosen })}
        />
      </Part>
      <Part rule width="edge">
        <div role="status">
          {answer ? <Answered answer={answer} /> : <Notice mark="unknown">{w.pick}</Notice>}
        </div>
      </Part>
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

/** Copper onto iron first: iron, copper, what goes on to the lime. For planning: it writes nothing. */
import { containerFigures } from '../../ledger/container-figures';
import { iron } from '../../reference/iron-tables';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { Begun } from '../begun';
import { TreatmentRule } from '../containers/base-rows';
import { containerWords } from '../containers/words';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { NumberField } from '../number-field';
import { useShell } from '../shell';
import { words } from '../words';
import { draftName, emptyIron, IronDraft, readIron } from './draft';
import { Cautions, IronRows, LimeRows } from './result';
import { ironWords as w } from './words';

const acids = Object.entries(w.acids) as [IronDraft['acid'], string][];

type FieldsProps = {
  readonly form: Form<IronDraft>;
  readonly excess: ReturnType<typeof readIron>['excess'];
};

const Fields = ({ form, excess }: FieldsProps) => (
  <Part>
    <SelectField
      label={w.acid}
      value={form.value.acid}
      options={acids.map(([value, label]) => ({ value, label }))}
      onChoose={(acid) => form.change({ acid })}
    />
    <NumberField
      label={w.excess}
      field={form.value.excess}
      units={['%']}
      onChange={(changed) => form.change({ excess: changed })}
      read={excess}
      optional
      hint={w.excessEmpty(iron.excess.value)}
    />
  </Part>
);

export function IronScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const id = at.id ?? '';
  const container = state.value.containers.get(id);
  const form = useForm(draftName(id), IronDraft, emptyIron);
  const back = [{ label: words.back, href: `#/containers/${id}` }];
  const { excess, result } = readIron(state.value, id, form.value);
  const { noBase } = containerFigures(state.value, id);
  const why = !container
    ? containerWords.gone
    : !result
      ? w.noLiquor
      : noBase !== null
        ? containerWords.noBase[noBase]
        : result.ok
          ? null
          : w.none[result.failure];
  if (!container || !result?.ok || why !== null)
    return (
      <Frame title={w.title} ways={back}>
        <Part>
          <Notice mark="unknown">{why}</Notice>
        </Part>
      </Frame>
    );
  return (
    <Frame title={w.title} second={w.of(unbroken(container.body.code))} ways={back}>
      <Begun form={form} />
      <TreatmentRule state={state.value} />
      <Notice mark="unknown" second={w.practiceSecond}>
        {w.practice}
      </Notice>
      <Fields form={form} excess={excess} />
      <IronRows found={result.value} containerId={id} />
      <LimeRows found={result.value} containerId={id} />
      <Cautions />
    </Frame>
  );
}

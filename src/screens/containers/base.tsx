/** One base for one container: how much, what it does, what it does not do. */
import { type BaseFigures, type ContainerFigures, containerFigures } from '../../ledger/container-figures';
import type { Figure } from '../../quantities/figure';
import { type BaseId, bases, metals } from '../../reference/tables';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { baseStated, shown, streamTitle } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { TreatmentRule } from './base-rows';
import { MassBar } from './mass-bar';
import { containerWords as w } from './words';

const isBase = (id: string): id is BaseId => id in bases;

type RowsProps = {
  readonly base: BaseId;
  readonly id: string;
  readonly found: BaseFigures;
  readonly all: ContainerFigures;
};

function FigureRows({ base, id, found, all }: RowsProps) {
  const { sign } = useShell();
  const rows: readonly (readonly [string, string, Figure | undefined])[] = [
    [w.heat, `${base}-heat`, found.warming?.heat],
    [w.rise, `${base}-rise`, found.warming?.rise],
    [w.gas, `${base}-gas`, found.carbonDioxide],
    [w.dry, `${base}-sludge`, found.sludge?.dry],
    [w.wet, `${base}-wet-sludge`, found.sludge?.wet],
    [w.nitrateLeft, 'nitrate', all.nitrate.figure],
  ];
  return (
    <Rows>
      {rows.map(
        ([title, key, figure]) =>
          figure && (
            <Row
              key={key}
              title={title}
              figure={<FigureValue {...shown(figure, sign.value)} />}
              href={`#/containers/${id}/working/${key}`}
              equals
            />
          ),
      )}
    </Rows>
  );
}

function Purity({ base }: { readonly base: BaseId }) {
  const { state, sign } = useShell();
  const stated = state.value.bases.get(base)?.body;
  const told = stated && baseStated(stated, sign.value);
  return (
    <Rows>
      <Row
        title={w.purityRow}
        second={stated ? (stated.saidBy ?? w.purityStated) : w.purityUsual}
        figure={<FigureValue {...(told ?? { value: bases[base].purity.value, unit: '%' })} />}
        href="#/record/bases"
      />
    </Rows>
  );
}

export function BaseScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const [id, base] = [at.id ?? '', at.base ?? ''];
  const container = state.value.containers.get(id);
  const all = containerFigures(state.value, id);
  const found = isBase(base) ? all.bases.get(base) : undefined;
  const back = [{ label: words.back, href: `#/containers/${id}` }];
  if (!container || !found || !isBase(base))
    return (
      <Frame title={w.baseTitle} ways={back}>
        <Part>
          <p>{all.noBase === null ? w.noBaseNothing : w.noBase[all.noBase]}</p>
        </Part>
      </Frame>
    );
  const open = found.needed.openIn.map((streamId) => streamTitle(state.value, streamId)).join('; ');
  return (
    <Frame title={bases[base].name} second={w.toNeutralise(unbroken(container.body.code))} ways={back}>
      {open === '' ? (
        <Part>
          <MassBar mass={found.needed.mass} />
        </Part>
      ) : (
        <Notice mark="unknown" second={w.missing(open)}>
          {w.moreNeeded}
        </Notice>
      )}
      <Rows>
        <Row
          title={`${bases[base].name}, ${w.baseTitle.toLowerCase()}`}
          figure={<MassFigure mass={found.needed.mass} />}
          href={`#/containers/${id}/working/${base}`}
          equals
        />
      </Rows>
      <TreatmentRule state={state.value} />
      <Purity base={base} />
      <FigureRows base={base} id={id} found={found} all={all} />
      {found.needed.leaves.length > 0 && (
        <Notice mark="wrong">{w.leaves(found.needed.leaves.map((m) => metals[m].name).join(', '))}</Notice>
      )}
      {all.silent.length > 0 && <Notice mark="unknown">{w.silent}</Notice>}
      <Part rule>
        {w.baseCautions.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

const MassFigure = ({ mass }: { readonly mass: Figure<'g'> }) => {
  const { sign } = useShell();
  return <FigureValue {...shown(mass, sign.value)} />;
};

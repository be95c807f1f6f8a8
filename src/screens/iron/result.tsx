/** What iron takes down, what goes on, and the lime stage with it and without. */
import type { IronFirst } from '../../chemistry/iron-first';
import type { Figure } from '../../quantities/figure';
import { printed } from '../../quantities/format';
import { iron } from '../../reference/iron-tables';
import { FigureValue } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { streamTitle } from '../amounts';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { sourceText } from '../source-text';
import { words } from '../words';
import { ironWords as w } from './words';

type Props = { readonly found: IronFirst; readonly containerId: string };

const workingOf = (containerId: string, name: string): string => `#/containers/${containerId}/iron/${name}`;

type AtMostProps = {
  readonly title: string;
  readonly figure: Figure;
  readonly href: string;
};

/** Of what may be none at all, only the most is shown. */
function AtMost({ title, figure, href }: AtMostProps) {
  const { sign } = useShell();
  const { value, high, unit } = printed(figure, sign.value);
  return <Row title={title} figure={<FigureValue value={high ?? value} unit={unit} />} href={href} equals />;
}

export function IronRows({ found, containerId }: Props) {
  const { state, sign } = useShell();
  const href = (name: string) => workingOf(containerId, name);
  const open = found.openIn.map((id) => streamTitle(state.value, id)).join('; ');
  const ends = [iron.copperLeft.low, iron.copperLeft.high].map((end) => end.replace('.', sign.value));
  return (
    <Part rule title={w.iron} width="edge">
      {open !== '' && (
        <Notice mark="unknown" second={w.openIn(open)}>
          {w.moreNeeded}
        </Notice>
      )}
      <Rows>
        <FigureRow title={w.ironNeeded} figure={found.iron} href={href('iron')} />
        <FigureRow title={w.perCopper} figure={found.ironPerCopper} href={href('per-copper')} />
        <FigureRow title={w.copper} figure={found.copper} href={href('copper')} />
        <FigureRow title={w.cement} figure={found.cement} href={href('cement')} />
        <Row
          title={w.copperLeft}
          second={w.copperLeftSecond}
          figure={<FigureValue value={ends.join(` ${words.to} `)} unit={iron.copperLeft.unit} />}
          href={href('copper-left')}
          equals
        />
        <FigureRow title={w.goingOn} figure={found.ironGoingOn} href={href('going-on')} />
        <FigureRow title={w.goingOnLitre} figure={found.ironGoingOnPerLitre} href={href('going-on-litre')} />
        <AtMost title={w.ammonium} figure={found.ammonium} href={href('ammonium')} />
        <AtMost title={w.nitricOxide} figure={found.nitricOxide} href={href('nitric-oxide')} />
      </Rows>
    </Part>
  );
}

export function LimeRows({ found, containerId }: Props) {
  const rows: readonly (readonly [name: string, title: string, figure: Figure | undefined])[] = [
    ['lime-first', w.limeFirst, found.baseFirst],
    ['lime-after', w.limeAfter, found.baseAfter],
    ['lime-all', w.limeAll, found.withIron.mass],
    ['lime-without', w.limeWithout, found.without.mass],
    ['lime-change', w.limeChange, found.baseChange],
    ['sludge-with', w.sludgeWith, found.withIron.sludge],
    ['sludge-without', w.sludgeWithout, found.without.sludge],
    ['sludge-change', w.sludgeChange, found.sludgeChange],
  ];
  return (
    <>
      <Part rule title={w.lime}>
        <p>{w.limeSpared}</p>
      </Part>
      <Part width="edge">
        <Rows>
          {rows.map(
            ([name, title, figure]) =>
              figure && (
                <FigureRow key={name} title={title} figure={figure} href={workingOf(containerId, name)} />
              ),
          )}
        </Rows>
      </Part>
    </>
  );
}

/** What is to be minded, each with who says so. */
export const Cautions = () => (
  <Part rule title={w.cautionsTitle}>
    {iron.cautions.map((caution) => (
      <p key={caution.text}>
        {caution.text} <small>({sourceText(caution)})</small>
      </p>
    ))}
    <p>{words.caution}</p>
  </Part>
);

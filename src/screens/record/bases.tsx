/** The bases on the shelf and how pure each is stated to be. */
import { baseIds, bases } from '../../reference/tables';
import { FigureValue } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { baseStated } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { baseWords as w } from './words';

const subscripts = (formula: string): string =>
  formula.replace(/\d/g, (digit) => String.fromCharCode(0x2080 + Number(digit)));

export function BasesScreen() {
  const { state, sign } = useShell();
  return (
    <Frame place="record" title={w.title} second={w.second}>
      <Part rule width="edge">
        <Rows label={w.title}>
          {baseIds.map((base) => {
            const { name, formula, purity } = bases[base];
            const stated = state.value.bases.get(base)?.body;
            const told = stated && baseStated(stated, sign.value);
            return (
              <Row
                key={base}
                title={`${name}, ${subscripts(formula)}`}
                second={stated ? w.stated(stated.saidBy) : w.taken(purity.low, purity.high)}
                figure={told && <FigureValue {...told} />}
                href={`#/record/bases/${base}`}
              />
            );
          })}
        </Rows>
      </Part>
    </Frame>
  );
}

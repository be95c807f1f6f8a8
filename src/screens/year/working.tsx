/** The working of any figure of a year. */

import { accounted } from '../../ledger/year-account';
import { yearFigures } from '../../ledger/year-figures';
import { Frame } from '../frame';
import { words } from '../words';
import { WorkingPage } from '../working';
import { useYear } from './use-year';
import { yearWords as w } from './words';

/** Lines of a balance lead back to it. */
function backOf(year: string, key: string): string {
  const [of] = key.split('-');
  const own = accounted.find((one) => one === of);
  return own ? `papers/year/${year}/of/${own}` : `papers/year/${year}`;
}

export function YearWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const found = useYear(at);
  const { year = '', key = '', steps = '' } = at;
  if (found === 'later')
    return (
      <Frame
        title={w.titleOf(year)}
        second={w.later}
        ways={[{ label: words.back, href: `#/${backOf(year, key)}` }]}
      />
    );
  return (
    <WorkingPage
      root={found ? yearFigures(found.account).get(key) : undefined}
      steps={steps}
      here={`papers/year/${year}/working/${key}`}
      subject={w.title(year)}
      back={backOf(year, key)}
    />
  );
}

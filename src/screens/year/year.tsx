/** A year: what arose, what left, what each substance came to, and what silver cost in waste. */
import { useMemo } from 'preact/hooks';
import { accountNotes } from '../../paperwork/year/account-words';
import { Button } from '../../ui/button';
import { Choices } from '../../ui/choices';
import { Part } from '../../ui/page';
import { Plot } from '../../ui/plot/plot';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { Balances } from './balances';
import { CodeRows, LeftRows } from './left-rows';
import { hasPlot, monthsPlot } from './plot';
import { AgentRows, SilverRows } from './silver-rows';
import { useYear } from './use-year';
import { HereRows, KindRows } from './waste-rows';
import { yearWords as w } from './words';

const ways = [{ label: words.back, href: '#/papers' }];

export function YearScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { go, sign } = useShell();
  const found = useYear(at);
  const months = found === 'later' ? undefined : found?.months;
  const spec = useMemo(() => months && monthsPlot(months, sign.value), [months, sign.value]);
  if (found === 'later') return <Frame title={w.titleOf(at.year)} second={w.later} ways={ways} />;
  if (!found || !months || !spec) return <Frame title={w.lost} ways={ways} />;
  const { year, years, account, running } = found;
  return (
    <Frame
      title={w.title(year)}
      second={running ? w.soFar : w.second}
      ways={ways}
      actions={
        <Button look="primary" voice="serif" href={`#/papers/year/${year}/paper`} second={w.paperSecond}>
          {w.paper}
        </Button>
      }
    >
      {years.length > 1 && (
        <Part>
          <Choices
            legend={w.which}
            value={year}
            choices={years.map((one) => ({ value: one, label: one }))}
            onChoose={(one) => go(`papers/year/${one}`)}
          />
        </Part>
      )}
      <KindRows year={year} account={account} />
      {hasPlot(months) && (
        <Part>
          <Plot spec={spec} />
        </Part>
      )}
      <LeftRows year={year} account={account} />
      <HereRows year={year} account={account} />
      <Balances year={year} account={account} />
      <SilverRows year={year} account={account} />
      <AgentRows year={year} account={account} />
      <CodeRows year={year} account={account} />
      <Part rule title={w.notes}>
        {accountNotes.map((note) => (
          <p key={note}>{note}</p>
        ))}
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

/** The balances of a year in rows, and one of them line by line, with what keeps it from closing and where to go. */
import type { YearAccount } from '../../ledger/year-account';
import type { Balance, BalanceLine } from '../../ledger/year-balance';
import {
  balanceSays,
  lineMeans,
  lineName,
  substanceName,
  upsetSays,
} from '../../paperwork/year/account-words';
import { FigureValue } from '../../ui/figure-value';
import { Mark, type MarkKind } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { shown, streamTitle } from '../amounts';
import { FigureRow } from '../figure-row';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { codeOf, thingAt } from './sayings';
import { useYear } from './use-year';
import { Edge, workingAt, type YearPart } from './waste-rows';
import { yearWords as w } from './words';

/** Closing has no mark: nothing here says that it is good enough. */
function markOf({ verdict, gaps }: Balance): MarkKind | null {
  if (verdict === 'more-in' || verdict === 'more-out') return 'wrong';
  return verdict === 'cannot-be-told' || gaps.length > 0 ? 'unknown' : null;
}

export function Balances({ year, account: { balances, toldNowhere } }: YearPart) {
  const { sign } = useShell();
  return (
    <Edge title={w.balances} says={balances.length === 0 ? w.noBalance : w.balancesSecond}>
      <Rows label={w.balances}>
        {balances.map((balance) => {
          const kind = markOf(balance);
          const sum = balance.sumIn ?? balance.sumOut;
          return (
            <Row
              key={balance.of}
              {...(kind ? { mark: <Mark kind={kind} /> } : {})}
              start="text"
              marked={kind === 'wrong'}
              title={substanceName(balance.of)}
              second={balanceSays(balance)}
              figure={sum && <FigureValue {...shown(sum, sign.value)} />}
              href={`#/papers/year/${year}/of/${balance.of}`}
            />
          );
        })}
      </Rows>
      {balances.length > 0 && toldNowhere.length > 0 && (
        <Part>
          <p>{w.toldNowhere(toldNowhere.map((of) => substanceName(of).toLowerCase()).join(', '))}</p>
        </Part>
      )}
    </Edge>
  );
}

type SideProps = {
  readonly year: string;
  readonly balance: Balance;
  readonly title: string;
  readonly lines: readonly BalanceLine[];
  readonly side: 'in' | 'out';
};

function Side({ year, balance, title, lines, side }: SideProps) {
  const sum = side === 'in' ? balance.sumIn : balance.sumOut;
  return (
    <Part rule width="edge" title={title}>
      <Rows label={title}>
        {lines.map(({ line, sum: of }) => (
          <FigureRow
            key={line}
            title={lineName[line]}
            second={lineMeans[line]}
            figure={of}
            href={workingAt(year, `${balance.of}-${line}`)}
          />
        ))}
        {sum ? (
          <FigureRow title={w.sumIn} figure={sum} href={workingAt(year, `${balance.of}-${side}`)} />
        ) : (
          <Row title={w.sumIn} figure={<span>{words.notDetermined}</span>} />
        )}
      </Rows>
    </Part>
  );
}

/** What contradicts itself or was not followed: of every substance alike. */
function Causes({ account }: { readonly account: YearAccount }) {
  const { state } = useShell();
  const { overPlaced, notFollowed, upsets } = account;
  if (overPlaced.length + notFollowed.length + upsets.length === 0) return null;
  const code = (id: string): string => codeOf(state.value, id);
  return (
    <Part rule width="edge" title={w.wrong}>
      <Rows label={w.wrong}>
        {overPlaced.map((id) => (
          <Row
            key={id}
            mark={<Mark kind="wrong" />}
            title={w.overPlaced(streamTitle(state.value, id))}
            href={`#/streams/${id}`}
          />
        ))}
        {notFollowed.map(({ entryId, containerId }) => (
          <Row
            key={`${entryId} ${containerId}`}
            mark={<Mark kind="unknown" />}
            title={w.notFollowed(code(containerId))}
            href={`#/record/entry/${entryId}`}
          />
        ))}
        {upsets.map(({ entryId, containerId, code: upset }) => (
          <Row
            key={`${entryId} ${containerId} ${upset}`}
            mark={<Mark kind="wrong" />}
            title={w.upset(code(containerId), upsetSays[upset])}
            href={`#/record/entry/${entryId}`}
          />
        ))}
      </Rows>
    </Part>
  );
}

export function BalanceScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const found = useYear(at);
  const ways = [{ label: words.back, href: `#/papers/year/${at.year ?? ''}` }];
  if (found === 'later') return <Frame title={w.titleOf(at.year)} second={w.later} ways={ways} />;
  const balance = found?.account.balances.find(({ of }) => of === at.of);
  if (!found || !balance) return <Frame title={w.lost} ways={ways} />;
  const { year, account } = found;
  const kind = markOf(balance);
  const { off, ins, outs, gaps } = balance;
  return (
    <Frame title={substanceName(balance.of)} second={w.title(year)} ways={ways}>
      <Part>
        {kind ? (
          <Notice mark={kind}>{`${balanceSays(balance)}.`}</Notice>
        ) : (
          <p>{`${balanceSays(balance)}.`}</p>
        )}
      </Part>
      <Side year={year} balance={balance} title={w.came} lines={ins} side="in" />
      <Side year={year} balance={balance} title={w.went} lines={outs} side="out" />
      {off && (
        <Part rule width="edge">
          <Rows>
            <FigureRow title={w.off} figure={off} href={workingAt(year, `${balance.of}-off`)} />
          </Rows>
        </Part>
      )}
      <Causes account={account} />
      {gaps.length > 0 && (
        <Part rule width="edge" title={w.gaps}>
          <Rows label={w.gaps}>
            {gaps.map(({ why, of }) => {
              const { name, href } = thingAt(state.value, of);
              return (
                <Row
                  key={`${why} ${of.id}`}
                  mark={<Mark kind="unknown" />}
                  title={name}
                  second={w.gap[why]}
                  href={href}
                />
              );
            })}
          </Rows>
        </Part>
      )}
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

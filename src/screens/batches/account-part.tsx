/** On the page of a batch: what it was charged with and gave back, and whether in and out close. */
import type { Account } from '../../ledger/account';
import { batchClosure, type Substance } from '../../ledger/batch-closure';
import type { BatchState, State } from '../../ledger/state';
import { Button } from '../../ui/button';
import { FigureValue } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { amountText, dayText, shown } from '../amounts';
import { hour } from '../frame';
import { useShell } from '../shell';
import { closureWords as c, chargeWords, recoveryWords, accountWords as w } from './account-words';
import styles from './log.module.css';

type Props = { readonly state: State; readonly batch: BatchState };

export function ChargedAndGotBack({ batch }: Omit<Props, 'state'>) {
  const { now, sign } = useShell();
  const charged = batch.charged.map(({ entryId, at, body: { charge } }) => ({
    entryId,
    at,
    title: chargeWords[charge.what],
    amount: charge.what === 'copper' ? charge.mass : charge.volume,
    strength: charge.what === 'acid' ? `${charge.strength.value}\u202f${charge.strength.unit}` : '',
  }));
  const recovered = batch.recovered.map(({ entryId, at, body: { recovery } }) => ({
    entryId,
    at,
    title: recoveryWords[recovery.what],
    amount: recovery.mass,
    strength: '',
  }));
  const lines = [...charged, ...recovered].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  return (
    <Part rule title={w.title} width="edge">
      <Rows>
        {lines.length === 0 && <Row title={w.none} />}
        {lines.map(({ entryId, at, title, amount, strength }) => (
          <Row
            key={entryId}
            title={title}
            second={[strength, `${dayText(at, now.value)} ${hour(at)}`].filter(Boolean).join(', ')}
            figure={amountText(amount, sign.value)}
            href={`#/record/entry/${entryId}`}
          />
        ))}
      </Rows>
      <div class={styles.add}>
        <Button href={`#/batches/${batch.body.batchId}/account`} second={w.addSecond}>
          {w.add}
        </Button>
      </div>
    </Part>
  );
}

export const verdictWords = ({ verdict }: Account): string =>
  ({
    closes: c.closes,
    'more-in': c.missing,
    'more-out': c.excess,
    'cannot-be-told': c.cannot,
  })[verdict];

const substances = Object.keys(c.of) as Substance[];

export function ClosureRows({ state, batch }: Props) {
  const { sign } = useShell();
  if (batch.streamIds.length === 0 && batch.charged.length === 0) return null;
  const closure = batchClosure(state, batch);
  return (
    <Part rule title={c.title} width="edge">
      <Rows>
        {substances.map((of) => {
          const account: Account = closure[of];
          const wrong = account.verdict === 'more-in' || account.verdict === 'more-out';
          const open = account.verdict === 'cannot-be-told';
          return (
            <Row
              key={of}
              title={c.of[of]}
              second={verdictWords(account)}
              {...(wrong || open
                ? { mark: <Mark kind={wrong ? 'wrong' : 'unknown'} /> }
                : { start: 'text' as const })}
              marked={wrong}
              figure={account.unaccounted && <FigureValue {...shown(account.unaccounted, sign.value)} />}
              href={`#/batches/${batch.body.batchId}/closure/${of}`}
              equals={account.unaccounted !== undefined}
            />
          );
        })}
      </Rows>
    </Part>
  );
}

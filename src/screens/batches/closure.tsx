/** One account of a batch: every line in, every line out, what is unaccounted for, or what nobody wrote down. */
import type { Account, AccountPart, Missing } from '../../ledger/account';
import { accountFigures, batchClosure, type Substance } from '../../ledger/batch-closure';
import type { BatchState, State } from '../../ledger/state';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { shown, streamTitle } from '../amounts';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { verdictWords } from './account-part';
import { closureWords as w } from './account-words';
import { batchWords } from './words';

type Place = { readonly batch: BatchState; readonly of: Substance };

const isSubstance = (text: string): text is Substance => text in w.of;

function placeOf(state: State, at: Readonly<Record<string, string>>): Place | null {
  const batch = state.batches.get(at.batch ?? '');
  const of = at.of ?? '';
  return batch && isSubstance(of) ? { batch, of } : null;
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** What nobody wrote down, in one line of words. */
function missingText(state: State, missing: readonly Missing[]): string {
  const names = missing.map(({ what, streamId }) =>
    streamId === undefined ? w.lost[what] : w.lostIn(w.lost[what], lower(streamTitle(state, streamId))),
  );
  return w.cannotWhy(names.join('; '));
}

type SideProps = {
  readonly side: 'in' | 'out';
  readonly account: Account;
  readonly base: string;
  readonly sum: string;
};

function Side({ side, account, base, sum }: SideProps) {
  const { state, sign } = useShell();
  const { parts, sum: total } = account[side];
  const line = ({ figure, streamId }: AccountPart, i: number) => (
    <Row
      key={`${side}${i}`}
      title={streamId === undefined ? figure.sentence : streamTitle(state.value, streamId)}
      second={streamId === undefined ? undefined : figure.sentence}
      figure={<FigureValue {...shown(figure, sign.value)} />}
      href={`${base}/${side}-${i + 1}`}
      equals={figure.how === 'worked-out'}
    />
  );
  return (
    <Part rule title={w[side]} width="edge">
      <Rows>
        {parts.length === 0 && <Row mark={<Mark kind="unknown" />} title={w.nothing} />}
        {parts.map(line)}
        {total && parts.length > 1 && (
          <Row
            title={sum}
            second={account.open[side] ? w.atLeast : undefined}
            figure={<FigureValue {...shown(total, sign.value)} />}
            href={`${base}/${side}`}
            equals
          />
        )}
      </Rows>
    </Part>
  );
}

export function ClosureScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, sign } = useShell();
  const place = placeOf(state.value, at);
  if (!place)
    return (
      <Frame place="batches" title={batchWords.title}>
        <Part>
          <p>{batchWords.gone}</p>
        </Part>
      </Frame>
    );
  const { batch, of } = place;
  const { batchId, code } = batch.body;
  const account: Account = batchClosure(state.value, batch)[of];
  const base = `#/batches/${batchId}/closure/${of}/working`;
  const became = batch.streamIds.some((id) => state.value.streams.get(id)?.body.stream === 'barren-liquor');
  return (
    <Frame place="batches" title={w.pageTitle(w.of[of], unbroken(code))} second={verdictWords(account)}>
      {account.missing.length > 0 && (
        <Notice mark="unknown">{missingText(state.value, account.missing)}</Notice>
      )}
      <Side side="in" account={account} base={base} sum={w.sumIn} />
      <Side side="out" account={account} base={base} sum={w.sumOut} />
      {account.unaccounted && (
        <Part rule width="edge">
          <Rows>
            <Row
              title={w.unaccounted}
              second={verdictWords(account)}
              figure={<FigureValue {...shown(account.unaccounted, sign.value)} />}
              href={`${base}/unaccounted`}
              equals
            />
          </Rows>
        </Part>
      )}
      <Part rule>
        <p>{w.left[of]}</p>
        {became && <p>{w.became}</p>}
      </Part>
    </Frame>
  );
}

export function ClosureWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const place = placeOf(state.value, at);
  const here = `batches/${at.batch}/closure/${at.of}`;
  const account: Account | null = place && batchClosure(state.value, place.batch)[place.of];
  return (
    <WorkingPage
      root={account ? accountFigures(account).get(at.key ?? '') : undefined}
      steps={at.steps ?? ''}
      here={`${here}/working/${at.key}`}
      subject={batchWords.batch(unbroken(place?.batch.body.code ?? ''))}
      back={here}
    />
  );
}

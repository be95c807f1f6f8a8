/** Something that a walk found: what was seen, by whom, and what was done about it. */
import { codeOfContainer } from '../../ledger/put-away';
import type { FindingState } from '../../ledger/state';
import { walkList } from '../../ledger/walks';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { askedAndSaid, sentence } from '../checklist/words';
import { performedWords } from '../fault';
import { Frame } from '../frame';
import { PhotoStrip } from '../photos/photo-strip';
import { useShell } from '../shell';
import { givenPhotos } from '../tried';
import { DonePage } from './done';
import { findingWords as w } from './words';

type Props = { readonly finding: FindingState };

const saidOf = ({ found }: FindingState): string => askedAndSaid(found.ask, sentence(found.answer));

/** "Maren, 12 May 10:40" of an entry. */
function useByWhom(): (who: string | null, at: string) => string {
  const { state, now } = useShell();
  return (who, at) =>
    w.by(state.value.people.get(who ?? '')?.body.name ?? w.nobody, momentText(at, now.value));
}

/** What was seen, and once it is closed what was done: nothing of it goes away. */
function History({ finding }: Props) {
  const { state } = useShell();
  const byWhom = useByWhom();
  const { found, closed, entryId, at } = finding;
  const who = state.value.log.find(({ id }) => id === entryId)?.who ?? null;
  return (
    <>
      <Part rule title={w.seen}>
        <p>{byWhom(who, at)}</p>
        {found.note !== undefined && <p>{found.note}</p>}
        <PhotoStrip photos={found.photos ?? []} label={w.photos} />
      </Part>
      {closed && (
        <Part rule title={w.closed}>
          <p>{closed.body.done}</p>
          <p>{byWhom(closed.who, closed.at)}</p>
          <PhotoStrip photos={closed.body.photos ?? []} label={w.photosNow} />
        </Part>
      )}
    </>
  );
}

function Page({ finding }: Props) {
  const { state } = useShell();
  const { found, closed, containerId, entryId } = finding;
  const code = unbroken(codeOfContainer(state.value, containerId) ?? '');
  // The card of the question, where the list still asks it.
  const card = walkList(state.value).items.find(({ id }) => id === found.look)?.card;
  const urgent = found.stops === true && !closed;
  return (
    <Frame
      place="today"
      title={saidOf(finding)}
      second={containerId === null ? w.place : w.container(code)}
      actions={
        closed ? undefined : (
          <Buttons>
            {urgent && card !== undefined && (
              <Button look="call" href={`#/sos/${card}`}>
                {w.card}
              </Button>
            )}
            <Button look="primary" href={`#/findings/${found.findingId}/done`}>
              {w.done}
            </Button>
          </Buttons>
        )
      }
    >
      {!closed && (
        <Part>
          <Notice mark={urgent ? 'stop' : 'wrong'} second={urgent ? w.open : undefined}>
            {urgent ? w.stops : w.open}
          </Notice>
        </Part>
      )}
      <History finding={finding} />
      <Part rule width="edge">
        <Rows>
          {containerId !== null && <Row title={w.container(code)} href={`#/containers/${containerId}`} />}
          <Row title={w.entry} href={`#/record/entry/${entryId}`} />
        </Rows>
      </Part>
    </Frame>
  );
}

export function FindingScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const finding = state.value.findings.get(at.finding ?? '');
  return finding ? <Page finding={finding} /> : <Frame place="today" title={w.gone} />;
}

export function CloseFinding({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, perform, go } = useShell();
  const finding = state.value.findings.get(at.finding ?? '');
  if (!finding) return <Frame place="today" title={w.gone} />;
  const { findingId } = finding.found;
  const home = `findings/${findingId}`;
  return (
    <DonePage
      findingId={findingId}
      second={saidOf(finding)}
      onBack={() => go(home, 'replace')}
      write={async (done, photos) => {
        const closed = await perform({ do: 'close-finding', findingId, done, ...givenPhotos(photos) });
        if (closed.ok) go(home, 'replace');
        return performedWords(closed);
      }}
    />
  );
}

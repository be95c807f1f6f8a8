/** One waste: every way in which what is dissolved in it is known, the one that is used, and those that disagree. */

import { howKnownWords } from '../../chemistry/evidence-words';
import type { Liquor } from '../../chemistry/liquor';
import { liquorOf } from '../../ledger/container-load';
import { contradictionsIn, shortIn } from '../../ledger/disagreements';
import { codeOfContainer } from '../../ledger/put-away';
import { evidenceFigures, evidenceIn, type SubstanceEvidence } from '../../ledger/stream-evidence';
import { metals } from '../../reference/tables';
import { FigureValue, unbroken } from '../../ui/figure-value';
import { Mark } from '../../ui/marks';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { heldText, shown, streamTitle } from '../amounts';
import { lifeWords } from '../containers/life-words';
import { capital } from '../containers/load-table';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { WorkingPage } from '../working';
import { substanceNames, evidenceWords as w } from './evidence-words';
import { batchWords } from './words';

type PieceProps = {
  readonly known: SubstanceEvidence;
  readonly piece: SubstanceEvidence['pieces'][number];
  readonly base: string;
};

function Piece({ known, piece, base }: PieceProps) {
  const { sign } = useShell();
  const used = piece === known.pieces[0];
  const disputed = known.disputes.some(({ more, less }) => [more.index, less.index].includes(piece.index));
  const standing = used ? w.used : piece.atLeast ? w.otherPart : w.other;
  return (
    <Row
      title={capital(howKnownWords[piece.by] ?? piece.by)}
      second={piece.atLeast && used ? `${standing}, ${w.atLeast}` : standing}
      marked={disputed}
      {...(disputed ? { mark: <Mark kind="wrong" /> } : { start: 'text' as const })}
      figure={<FigureValue {...shown(piece.all, sign.value)} />}
      href={`${base}/${known.of}-${piece.index}`}
      equals
    />
  );
}

function Substance({ known, base }: { readonly known: SubstanceEvidence; readonly base: string }) {
  const { sign } = useShell();
  const name = substanceNames([known.of]);
  return (
    <Part rule title={capital(name)} width="edge">
      {known.disputes.length > 0 && <Notice mark="wrong">{w.disagree(name)}</Notice>}
      <Rows>
        {known.pieces.map((piece) => (
          <Piece key={piece.index} known={known} piece={piece} base={base} />
        ))}
        {known.disputes.map(({ more, less, difference }, i) => (
          <Row
            key={`${more.index} ${less.index}`}
            start="text"
            title={w.between}
            second={[more.by, less.by].map((by) => howKnownWords[by] ?? by).join('; ')}
            figure={<FigureValue {...shown(difference, sign.value)} />}
            href={`${base}/${known.of}-between-${i}`}
            equals
          />
        ))}
      </Rows>
    </Part>
  );
}

/** The acid account does not come out: more was taken than charged, or all of it by the likely value. */
function Short({ liquor, base }: { readonly liquor: Liquor; readonly base: string }) {
  const { sign } = useShell();
  const { short } = contradictionsIn(liquor);
  if (!short) return shortIn(liquor) ? <Notice mark="unknown">{w.usedUp}</Notice> : null;
  return (
    <Part rule width="edge">
      <Notice mark="wrong">{w.short}</Notice>
      <Rows>
        <Row
          start="text"
          title={w.shortBy}
          figure={<FigureValue {...shown(short, sign.value)} />}
          href={`${base}/short`}
          equals
        />
      </Rows>
    </Part>
  );
}

function Evidence({ liquor, base }: { readonly liquor: Liquor; readonly base: string }) {
  const found = evidenceIn(liquor, contradictionsIn(liquor));
  const untold = (['Cu', 'Ni'] as const).filter((metal) => !liquor.metals.has(metal));
  const names = [
    ...untold.map((metal) => metals[metal].name),
    ...(liquor.freeAcid ? [] : [substanceNames(['acid'])]),
  ];
  return (
    <>
      <Short liquor={liquor} base={base} />
      {found.map((known) => (
        <Substance key={known.of} known={known} base={base} />
      ))}
      {names.length > 0 && (
        <Part rule width="edge">
          <Rows>
            <Row mark={<Mark kind="unknown" />} title={capital(names.join(', '))} second={w.notTold} />
          </Rows>
        </Part>
      )}
    </>
  );
}

export function StreamScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state, sign } = useShell();
  const id = at.stream ?? '';
  const stream = state.value.streams.get(id);
  if (!stream)
    return (
      <Frame place="batches" title={batchWords.title}>
        <Part>
          <p>{w.gone}</p>
        </Part>
      </Frame>
    );
  const liquor = liquorOf(state.value, id);
  const where = [...new Set(stream.placements.map(({ containerId }) => containerId))];
  return (
    <Frame place="batches" title={streamTitle(state.value, id)} second={heldText(stream.amount, sign.value)}>
      {liquor ? (
        <Evidence liquor={liquor} base={`#/streams/${id}/working`} />
      ) : (
        <Part>
          <p>{w.solid}</p>
        </Part>
      )}
      <Part rule width="edge">
        <Rows>
          {where.map((containerId) => (
            <Row
              key={containerId}
              title={w.inContainer(unbroken(codeOfContainer(state.value, containerId) ?? ''))}
              href={`#/containers/${containerId}`}
            />
          ))}
          {liquor && (
            <Row
              title={lifeWords.laterDoor}
              second={lifeWords.laterDoorSecond}
              href={`#/streams/${id}/found-later`}
            />
          )}
          <Row title={w.entry} second={w.entrySecond} href={`#/record/entry/${stream.entryId}`} />
        </Rows>
      </Part>
    </Frame>
  );
}

export function StreamWorking({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const [id, key] = [at.stream ?? '', at.key ?? ''];
  const liquor = liquorOf(state.value, id);
  return (
    <WorkingPage
      root={liquor && evidenceFigures(liquor).get(key)}
      steps={at.steps ?? ''}
      here={`streams/${id}/working/${key}`}
      subject={streamTitle(state.value, id)}
      back={`streams/${id}`}
    />
  );
}

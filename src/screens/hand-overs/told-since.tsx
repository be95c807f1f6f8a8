/** What came of a load: proofs that were filed, and what was refused and came back, each with its papers. */
import type { LoadRejected, ProofFiled } from '../../ledger/entries/hand-overs';
import { photosNamed } from '../../ledger/photos-named';
import type { HandOverState, Told } from '../../ledger/state';
import { Part } from '../../ui/page';
import { calendarDayText, dayText } from '../amounts';
import { FileRows } from '../files/file-rows';
import { PhotoStrip } from '../photos/photo-strip';
import { useShell } from '../shell';
import { Facts } from './facts';
import { codesOf } from './load';
import { DaysRunOn } from './returned';
import { handOverWords as w } from './words';

function Proof({ told: { body, at } }: { readonly told: Told<ProofFiled> }) {
  const { state, now } = useShell();
  const { saidBy, document, treatedHow, datedOn, note, files, containerIds } = body;
  return (
    <Part rule title={`${codesOf(state.value, containerIds)}: ${w.proved(dayText(at, now.value))}`}>
      <Facts
        of={[
          [w.saidBy, saidBy],
          [w.number, document],
          [w.treatedHow, treatedHow],
          [w.dated, datedOn && calendarDayText(datedOn, now.value)],
          [w.facts.note, note],
        ]}
      />
      <PhotoStrip photos={photosNamed(body)} label={w.proofPhotos} />
      <FileRows files={files ?? []} />
    </Part>
  );
}

function Back({ told: { body, at } }: { readonly told: Told<LoadRejected> }) {
  const { state, now } = useShell();
  const { saidBy, document, why, note, files, containerIds } = body;
  return (
    <Part rule title={`${codesOf(state.value, containerIds)}: ${w.back(dayText(at, now.value))}`}>
      <Facts
        of={[
          [w.why, why],
          [w.backBy, saidBy],
          [w.number, document],
          [w.facts.note, note],
        ]}
      />
      <PhotoStrip photos={photosNamed(body)} label={w.photos} />
      <FileRows files={files ?? []} />
      <DaysRunOn />
    </Part>
  );
}

export const ToldSince = ({ handOver }: { readonly handOver: HandOverState }) => (
  <>
    {handOver.proofs.map((told) => (
      <Proof key={told.entryId} told={told} />
    ))}
    {handOver.rejected.map((told) => (
      <Back key={told.entryId} told={told} />
    ))}
  </>
);

/** A treatment while it runs: the plot, what to do now, what is left to add; two buttons at the thumb. */

import { useMemo } from 'preact/hooks';
import { codeOfContainer } from '../../ledger/put-away';
import type { TreatmentState } from '../../ledger/state';
import { nextLook, stageOf } from '../../ledger/treatment-run';
import { wasteKinds } from '../../ledger/waste-kinds';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Plot } from '../../ui/plot/plot';
import { useStayAwake } from '../../ui/stay-awake';
import { Nowhere } from '../checklist/nowhere';
import { TreatmentRule } from '../containers/base-rows';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { words } from '../words';
import { AfterTheEnd } from './run-after';
import { RunAsks } from './run-asks';
import { Contradicted } from './run-contradicted';
import { WhatIsLeft } from './run-left';
import { Now } from './run-next';
import { useOutlook } from './run-outlook';
import { runPlot } from './run-plot';
import { InThePot, RunHistory, TooWarm, useWarmed } from './run-rows';
import { begunFaults, runTitle, stageText } from './run-texts';
import { runWords as w } from './run-words';

type Props = { readonly treatment: TreatmentState };

/** The reading is what is wanted first, after a dose, and where something is wrong; both stay where they are. */
function Thumb({ treatment, wrong }: Props & { readonly wrong: boolean }) {
  const at = `#/treatment/${treatment.body.treatmentId}`;
  const { over } = useWarmed({ treatment });
  const readingNext = wrong || over || nextLook(treatment) !== null || treatment.readings.length === 0;
  return (
    <Buttons side>
      <Button centred look={readingNext ? 'door' : 'primary'} href={`${at}/dose`}>
        {w.writeDose}
      </Button>
      <Button centred look={readingNext ? 'primary' : 'door'} href={`${at}/reading`}>
        {w.writeReading}
      </Button>
    </Buttons>
  );
}

function BegunHow({ treatment }: Props) {
  const { state } = useShell();
  const { notAllowed, noClearance } = begunFaults(state.value, treatment);
  return (
    <>
      {notAllowed ? (
        <Notice mark="wrong" second={w.flags.notAllowedSecond}>
          {w.flags.notAllowed}
        </Notice>
      ) : (
        <TreatmentRule state={state.value} />
      )}
      {noClearance && (
        <Notice mark="wrong" second={w.flags.notAllowedSecond}>
          {w.flags.noClearance}
        </Notice>
      )}
    </>
  );
}

function Running({ treatment }: Props) {
  const { state, sign } = useShell();
  const { treatmentId, containerId } = treatment.body;
  const code = unbroken(codeOfContainer(state.value, containerId) ?? '');
  const found = useOutlook(treatment);
  const stage = useMemo(() => stageOf(treatment), [treatment]);
  const outlook = found?.ok ? found.value : null;
  const ammonia = wasteKinds(state.value, containerId).kinds.includes('ammonia-test-waste');
  const wrong = (outlook?.contradictions.length ?? 0) > 0;
  const spec = useMemo(() => runPlot({ stage, outlook, sign: sign.value }), [stage, outlook, sign.value]);
  useStayAwake();
  return (
    <Frame
      title={runTitle(code, stage, sign.value)}
      second={stageText(treatment, stage)}
      ways={[
        { label: w.back, href: `#/containers/${containerId}` },
        { label: w.endIt, href: `#/treatment/${treatmentId}/end` },
      ]}
      actions={<Thumb treatment={treatment} wrong={wrong || ammonia} />}
    >
      {ammonia && (
        <Notice mark="stop" role="alert" second={w.noOutlook.ammoniaSecond}>
          {w.noOutlook.ammonia}
        </Notice>
      )}
      <TooWarm treatment={treatment} />
      {wrong && outlook && <Contradicted outlook={outlook} />}
      <Part>
        <Plot spec={spec} />
      </Part>
      {!ammonia && (
        <>
          <Now treatment={treatment} look={nextLook(treatment)} found={found} />
          <WhatIsLeft found={found} treatmentId={treatmentId} />
        </>
      )}
      <InThePot treatment={treatment} />
      <RunAsks treatment={treatment} />
      <BegunHow treatment={treatment} />
      <RunHistory treatment={treatment} />
      <Part rule>
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

export function RunPage({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const treatment = state.value.treatments.get(at.treatment ?? '');
  if (!treatment) return <Nowhere>{w.gone}</Nowhere>;
  return treatment.ended ? <AfterTheEnd treatment={treatment} /> : <Running treatment={treatment} />;
}

/** The ventilation check of a charge: what it makes against what the place carries away. Nothing is written down until it is taken. */
import type { StationState } from '../../ledger/state';
import { portionTaken } from '../../safety/ventilation/rounded';
import { verdictWords } from '../../safety/ventilation/words';
import { Button, Buttons } from '../../ui/button';
import { unbroken } from '../../ui/figure-value';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { Begun } from '../begun';
import { homeOf } from '../checklist/list-for';
import { Fault, useWriting } from '../fault';
import { type Form, useForm } from '../form';
import { Frame } from '../frame';
import { useShell } from '../shell';
import { kindWords } from '../stations/words';
import { useTried } from '../tried';
import { words } from '../words';
import { ChargeFields } from './charge-fields';
import { draftName, emptyCharge, type Step, VentilationDraft } from './draft';
import { LastCharge } from './offers';
import { Result } from './result';
import { type CheckFor, checkFor, placeOf, resultFor } from './result-for';
import { ventilationWords as w } from './words';

export function VentilationScreen({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const check = checkFor(state.value, at);
  if (!check)
    return (
      <Frame place="batches" title={w.title}>
        <Part>
          <p>{w.goneFor}</p>
        </Part>
      </Frame>
    );
  return <Check key={`${check.part}/${check.list}`} check={check} />;
}

type PlaceProps = {
  readonly place: StationState | null;
  readonly tried: boolean;
  /** This page, to come back to. */
  readonly here: string;
};

/** Where it is to be worked: the phone is there from then on. */
function Place({ place, tried, here }: PlaceProps) {
  const { state, chooseStation } = useShell();
  const used = [...state.value.stations.values()].filter(({ givenUpAt }) => givenUpAt === null);
  return (
    <Part>
      {used.length === 0 ? (
        <p>{w.noPlace}</p>
      ) : (
        <SelectField
          label={w.place}
          value={place?.body.stationId}
          none={words.choose}
          options={used.map(({ body }) => ({ value: body.stationId, label: body.name }))}
          onChoose={chooseStation}
          hint={place ? w.phoneHere(kindWords[place.body.station.is]) : w.choosePlace}
          error={tried && !place ? w.choosePlace : undefined}
        />
      )}
      {!place && (
        <Buttons>
          <Button href={`#/record/stations/new/for/${here}`}>{w.describe}</Button>
        </Buttons>
      )}
    </Part>
  );
}

const stepOptions = (Object.keys(w.steps) as Step[]).map((value) => ({ value, label: w.steps[value] }));

/** The step is the list's own, or chosen. */
const StepField = ({ form }: { readonly form: Form<VentilationDraft> }) => (
  <SelectField
    label={w.step}
    value={form.value.step}
    options={stepOptions}
    onChoose={(step) => form.change({ step })}
  />
);

const isPlaceOnly = (step: Step): boolean => step === 'acid-dilution' || step === 'filtration';

/** The limit that this workshop took last is offered first: it is the authority's, not the charge's. */
function useEmpty(step: Step): () => VentilationDraft {
  const { state } = useShell();
  const last = [...state.value.ventilationChecks.values()]
    .map(({ body }) => body.charge)
    .findLast((charge) => charge.step === 'leach' || charge.step === 'cementation');
  const limit = last && 'limit' in last && typeof last.limit === 'string' ? { limit: last.limit } : {};
  return () => ({ ...emptyCharge(step), ...limit });
}

function Check({ check }: { readonly check: CheckFor }) {
  const shell = useShell();
  const { state, station, go } = shell;
  const { part, list, what, code } = check;
  const { batchId } = what;
  const asked = list !== '-';
  const name = draftName(part, list);
  const form = useForm(name, VentilationDraft, useEmpty(check.step ?? 'leach'));
  const { tried, tryNow } = useTried();
  const { write, fault, busy } = useWriting(form);
  const place = placeOf(state.value, station.value);
  const { read, result } = resultFor(shell, form.value, place);
  const back = asked ? `check/${part}/${list}` : homeOf(what);

  async function take(): Promise<void> {
    tryNow();
    if (!result || !read.charge || !place) return;
    const portion = portionTaken(result);
    const written = await write({
      do: 'log-ventilation-check',
      batchId,
      stationId: place.body.stationId,
      charge: read.charge,
      verdict: result.verdict,
      ...(portion ? { portion } : {}),
    });
    const body = written?.[0]?.body;
    if (body?.kind !== 'ventilation-checked') return;
    form.done();
    go(asked ? back : `ventilation-checks/${body.checkId}`, 'replace');
  }

  return (
    <Frame
      title={w.title}
      second={code === undefined ? w.forNone : w.forBatch(unbroken(code))}
      ways={[{ label: words.back, href: `#/${back}` }]}
      actions={
        <Button
          look="primary"
          disabled={busy}
          second={result ? verdictWords[result.verdict] : w.notYet}
          onTap={() => void take()}
        >
          {w.take}
        </Button>
      }
    >
      <Begun form={form} />
      <Place place={place} tried={tried} here={`ventilation/${part}/${list}`} />
      {check.step === undefined && (
        <Part>
          <StepField form={form} />
        </Part>
      )}
      {isPlaceOnly(form.value.step) ? (
        <Part rule>
          <p>{w.placeOnly}</p>
        </Part>
      ) : (
        <>
          <LastCharge form={form} batchId={batchId} />
          <ChargeFields form={form} read={read} tried={tried} batchId={batchId} />
        </>
      )}
      {result && (
        <Result
          result={result}
          batchId={batchId}
          href={(figure) => `#/ventilation/${part}/${list}/working/${figure}`}
        />
      )}
      <Part>
        <Fault words={fault} />
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

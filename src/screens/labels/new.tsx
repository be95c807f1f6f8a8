/** Making labels: for the container of the address, or for those that are ticked. */
import * as z from 'zod/mini';
import type { ContainerState } from '../../ledger/state';
import type { LabelData } from '../../paperwork/labels/label-data';
import { labelSheetIds, placesOn } from '../../paperwork/labels/label-sizes';
import type { LabelLayout } from '../../paperwork/labels/layout';
import { Button } from '../../ui/button';
import { Choices, Tick } from '../../ui/choices';
import { unbroken } from '../../ui/figure-value';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { SelectField } from '../../ui/select-field';
import { contentsTitle } from '../amounts';
import { Fault } from '../fault';
import { useForm } from '../form';
import { Frame } from '../frame';
import { Made } from '../papers/made';
import { usualSheet } from '../papers/sheet';
import { PaperUnderWay } from '../papers/under-way';
import { useCommon, useMaking } from '../papers/use-making';
import { paperWords } from '../papers/words';
import { useShell } from '../shell';
import { words } from '../words';
import { HazardPictogram } from './hazard-pictogram';
import { LabelPicture } from './label-picture';
import styles from './labels.module.css';
import { type Preview, usePreview } from './use-preview';
import { labelPageWords as w } from './words';

const Draft = z.object({
  chosen: z.array(z.string()),
  sheet: z.enum(labelSheetIds),
  black: z.boolean(),
  firstPlace: z.number(),
});

/** What is open on one label, before it is printed. */
function LabelNotices({
  label,
  leftOut,
  generatorNumber,
}: {
  readonly label: LabelData;
  readonly leftOut: readonly string[];
  readonly generatorNumber: string;
}) {
  const { code, hazards, contents, shipment } = label;
  const open = shipment ? w.shipmentOpen(generatorNumber, shipment) : [];
  return (
    <>
      {contents.are === 'doubtful' ? (
        <Notice mark="unknown" second={w.doubtfulSecond}>
          {w.doubtful(code)}
        </Notice>
      ) : (
        hazards === 'not determined' && (
          <Notice mark="unknown" second={w.hazardsOpenSecond}>
            {w.hazardsOpen(code)}
          </Notice>
        )
      )}
      {hazards !== 'not determined' && (
        <Notice
          mark={hazards.standing.is}
          second={
            <span class={styles.pictograms}>
              {hazards.pictograms.map((id) => (
                <HazardPictogram key={id} id={id} sizePx={48} />
              ))}
            </span>
          }
        >
          {w.hazards(code, hazards)}
        </Notice>
      )}
      {shipment && (
        <Notice mark={open.length > 0 ? 'unknown' : 'leaving'} second={w.shipmentSecond(open)}>
          {w.shipment(code)}
        </Notice>
      )}
      {leftOut.length > 0 && (
        <p>
          {w.leftOut(code, leftOut)} {w.leftOutSecond}
        </p>
      )}
    </>
  );
}

const leftOutOf = (layouts: readonly LabelLayout[]): readonly string[] => [
  ...new Set(layouts.flatMap(({ leftOut }) => leftOut)),
];

function Shown({ preview }: { readonly preview: Preview }) {
  if (preview.state === 'none') return null;
  if (preview.state === 'drawing') return <p role="status">{w.previewing}</p>;
  if (preview.state === 'not-loaded') return <p role="status">{paperWords.notLoaded}</p>;
  const { data, layouts } = preview.laidOut;
  const [first = []] = layouts;
  const codes = data.labels.map(({ code }) => code);
  return (
    <>
      {codes.length > 1 && <p>{w.previewOf(codes)}</p>}
      {first.map((layout, at) => (
        <LabelPicture key={at === 0 ? 'own' : 'shipment'} layout={layout} />
      ))}
      {data.labels.map((label, at) => (
        <LabelNotices
          key={label.containerId}
          label={label}
          leftOut={leftOutOf(layouts[at] ?? [])}
          generatorNumber={data.workshop.generatorNumber}
        />
      ))}
    </>
  );
}

type ToTick = {
  readonly containers: readonly ContainerState[];
  readonly chosen: readonly string[];
  readonly onChoose: (chosen: readonly string[]) => void;
};

function ContainersToTick({ containers, chosen, onChoose }: ToTick) {
  const { state } = useShell();
  return (
    <Part>
      {containers.length === 0 && <p>{w.none}</p>}
      {containers.map(({ body: { containerId, code } }) => (
        <Tick
          key={containerId}
          label={unbroken(code)}
          second={contentsTitle(state.value, containerId)}
          checked={chosen.includes(containerId)}
          onChange={(ticked) =>
            onChoose(ticked ? [...chosen, containerId] : chosen.filter((one) => one !== containerId))
          }
        />
      ))}
    </Part>
  );
}

export function NewLabels({ at }: { readonly at: Readonly<Record<string, string>> }) {
  const { state } = useShell();
  const form = useForm(`labels-${at.id ?? 'several'}`, Draft, () => ({
    chosen: at.id === undefined ? [] : [at.id],
    sheet: usualSheet(navigator.language, state.value) === 'Letter' ? ('4x6in' as const) : ('A6' as const),
    black: false,
    firstPlace: 0,
  }));
  const { value, change } = form;
  const { make, made, fault, underWay } = useMaking(form.done);
  const containers = [...state.value.containers.values()];
  const containerIds = containers
    .map(({ body }) => body.containerId)
    .filter((id) => value.chosen.includes(id));
  const wanted = {
    containerIds,
    sheet: value.sheet,
    frame: value.black ? 'black' : 'red',
    firstPlace: value.firstPlace,
  } as const;
  const preview = usePreview(wanted, useCommon());
  const one = at.id === undefined ? undefined : state.value.containers.get(at.id);
  const count = containerIds.length;
  if (made) return <Made paper={made} says={w.made(made.codes.length)} />;
  if (underWay) return <PaperUnderWay title={w.making} underWay={underWay} />;
  return (
    <Frame
      title={one ? w.title(unbroken(one.body.code)) : w.titleSeveral}
      second={one ? undefined : w.secondSeveral}
      ways={[{ label: words.back, href: one ? `#/containers/${at.id}/more` : '#/papers' }]}
      actions={
        <>
          <Fault words={fault} />
          <Button
            look="primary"
            voice="serif"
            disabled={containers.length === 0}
            second={count === 0 ? w.chooseOne : w.makeItSecond(count)}
            onTap={() => void make({ kind: 'labels', wanted })}
          >
            {w.makeIt(count)}
          </Button>
        </>
      }
    >
      {!one && (
        <ContainersToTick
          containers={containers}
          chosen={containerIds}
          onChoose={(chosen) => change({ chosen: [...chosen] })}
        />
      )}
      <Part rule={!one} title={w.preview}>
        <Shown preview={preview} />
      </Part>
      <Part rule>
        <Choices
          legend={w.sheet}
          value={value.sheet}
          choices={labelSheetIds.map((id) => ({
            value: id,
            label: w.sheets(id),
            second: w.sheetSeconds(id),
          }))}
          onChoose={(sheet) => change({ sheet, firstPlace: 0 })}
        />
        {placesOn(value.sheet).length > 1 && (
          <SelectField
            label={w.firstPlace}
            value={String(value.firstPlace)}
            options={placesOn(value.sheet).map(({ index, number }) => ({ value: index, label: number }))}
            onChoose={(chosen) => change({ firstPlace: Number(chosen) })}
          />
        )}
        <Tick
          label={w.black}
          second={w.blackSecond}
          checked={value.black}
          onChange={(black) => change({ black })}
        />
        <p>{words.caution}</p>
      </Part>
    </Frame>
  );
}

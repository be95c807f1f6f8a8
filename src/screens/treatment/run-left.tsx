/** What is left to add, low to high, and why it is not worked out where it is not. */
import type { Outlook, OutlookFound } from '../../ledger/run-outlook';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Rows } from '../../ui/row';
import { MassBar } from '../containers/mass-bar';
import { FigureRow } from '../figure-row';
import { useShell } from '../shell';
import { noOutlookWords } from './run-figures';
import { runWords as w } from './run-words';

type Props = { readonly treatmentId: string };

function Left({ outlook, treatmentId }: Props & { readonly outlook: Outlook }) {
  const at = `#/treatment/${treatmentId}/working`;
  const { left, planned } = outlook;
  if (!left) return null;
  return (
    <>
      <Part rule title={w.left}>
        <MassBar mass={left} lowUse={w.leftLow} highUse={w.leftHigh} />
      </Part>
      <Rows>
        <FigureRow title={left.sentence} figure={left} href={`${at}/left`} />
        <FigureRow title={w.portionMost} figure={planned.byHeat} href={`${at}/by-heat`} />
        {planned.byFoam && <FigureRow title={w.portionFoam} figure={planned.byFoam} href={`${at}/by-foam`} />}
      </Rows>
    </>
  );
}

export function WhatIsLeft({ found, treatmentId }: Props & { readonly found: OutlookFound | null }) {
  const { sign } = useShell();
  if (!found) return null;
  return found.ok ? (
    <Left outlook={found.value} treatmentId={treatmentId} />
  ) : (
    <Notice mark="unknown" second={noOutlookWords(found.why, sign.value)}>
      {w.noOutlook.title}
    </Notice>
  );
}

/** What a batch was given and gave back, as figures. */
import { capital, weighed } from '../chemistry/evidence';
import { acidCharged, routeOf } from '../chemistry/free-acid';
import { volumeRead } from '../chemistry/liquor';
import { minus, over, plus } from '../quantities/expression';
import { type Figure, workedOut } from '../quantities/figure';
import { type Found, known, lacking, together } from './account';
import type { Charge, Recovery } from './entries/accounts';
import type { BatchState } from './state';

type Written<W extends Charge['what']> = {
  readonly entryId: string;
  readonly charge: Extract<Charge, { what: W }>;
};

const acids = ({ charged }: BatchState): readonly Written<'acid'>[] =>
  charged.flatMap(({ entryId, body: { charge } }) => (charge.what === 'acid' ? [{ entryId, charge }] : []));

const waters = (
  { charged }: BatchState,
  what: 'dilution-water' | 'wash-water',
  sentence: string,
): readonly Figure<'L'>[] =>
  charged.flatMap(({ entryId, body: { charge } }) =>
    charge.what === what
      ? [volumeRead(charge.volume, `entry/${entryId}/volume`, sentence, charge.volumeSpread)]
      : [],
  );

const dilution = (batch: BatchState) => waters(batch, 'dilution-water', 'Water for diluting');

/** Weighed dry, g. */
export const recovered = ({ recovered }: BatchState, what: Recovery['what']): readonly Figure<'g'>[] =>
  recovered.flatMap(({ entryId, body: { recovery } }) =>
    recovery.what === what
      ? [weighed(recovery.mass, `entry/${entryId}/mass`, `${capital(what)} got back`, recovery.massSpread)]
      : [],
  );

/** Acid and water, L. @param washed whether there is wash water that must have come from somewhere */
export function volumeCharged(batch: BatchState, washed: boolean): Found<'L'> {
  const acid = acids(batch).map(({ entryId, charge }) =>
    volumeRead(charge.volume, `entry/${entryId}/volume`, 'Acid charged', charge.volumeSpread),
  );
  const wash = waters(batch, 'wash-water', 'Water for washing');
  return together(
    ...[...acid, ...dilution(batch), ...wash].map((figure) => known(figure)),
    ...(acid.length === 0 ? [lacking<'L'>('acid-charged')] : []),
    ...(washed && wash.length === 0 ? [lacking<'L'>('water-charged')] : []),
  );
}

/** Copper gone from the sheet, g. @param cemented whether there must have been a sheet */
export function copperFromSheet(batch: BatchState, cemented: boolean): Found<'g'> {
  const into = batch.charged.flatMap(({ entryId, body: { charge } }) =>
    charge.what === 'copper'
      ? [weighed(charge.mass, `entry/${entryId}/mass`, 'Copper weighed in', charge.massSpread)]
      : [],
  );
  const out = recovered(batch, 'copper');
  if (into.length === 0) return cemented ? lacking('copper-in') : together();
  if (out.length === 0) return lacking('copper-out');
  return known(
    workedOut({
      sentence: 'Copper gone from the sheet',
      unit: 'g',
      formula: minus(plus(...into), plus(...out)),
    }),
  );
}

export type AcidInto = {
  readonly found: Found<'mol'>;
  /** How the metals dissolved in it once it was diluted; absent where the acid is not known. */
  readonly route?: Figure<'1'>;
};

/** Acid charged, mol. */
export function acidInto(batch: BatchState): AcidInto {
  const all = acids(batch).map(({ entryId, charge }) => acidCharged(charge, `entry/${entryId}`));
  const told = all.filter((one) => one !== undefined);
  if (all.length === 0) return { found: lacking('acid-charged') };
  if (told.length < all.length) return { found: lacking('acid-strength') };
  const strength = workedOut({
    sentence: 'Strength once diluted',
    unit: 'mol/L',
    formula: over(
      plus(...told.map(({ moles }) => moles)),
      plus(...told.map(({ volume }) => volume), ...dilution(batch)),
    ),
  });
  return {
    found: together(...told.map(({ moles }) => known(moles))),
    route: routeOf(strength, `batch/${batch.body.batchId}`),
  };
}

/** What the gas of a lot does to a room: that of a room station, or the one that a hood stands in when its fan fails. */
import type { Figure } from '../../quantities/figure';
import { airChanges } from './airflow';
import { dangerous } from './limit';
import { closedIn, closedReaches, purgeTime, settlesAt } from './purge';
import type { Release } from './release';

export type InRoom = {
  /** With all of it in the room and nothing to carry it away. */
  readonly shut?: Figure<'ppm'>;
  /** Soonest that it is immediately dangerous; absent where it does not come to that. */
  readonly dangerousAfter?: Figure<'min'>;
  readonly changes?: Figure<'1/h'>;
  /** What it settles at while the gas comes. */
  readonly mean?: Figure<'ppm'>;
  readonly peak?: Figure<'ppm'>;
  /** From shut with all of it in, until it is at the limit; by a meter, never by the clock alone. */
  readonly airing?: Figure<'min'>;
};

type Asked = {
  readonly volume: Figure<'m³'>;
  readonly airflow?: Figure<'m³/h'> | undefined;
  readonly mixing: Figure<'1'>;
  readonly limit: Figure<'ppm'>;
  readonly release: Release;
};

type Found<F extends Figure> = { readonly ok: true; readonly value: F } | { readonly ok: false };
const value = <F extends Figure>(found: Found<F>): F | undefined => (found.ok ? found.value : undefined);

const present = (figures: { readonly [K in keyof InRoom]: InRoom[K] | undefined }): InRoom =>
  Object.fromEntries(Object.entries(figures).filter(([, figure]) => figure !== undefined));

/** Figures that cannot be worked out are absent: no volume, no airflow, nothing that has to be aired. */
export function inRoom({ volume, airflow, mixing, limit, release }: Asked): InRoom {
  const shut = value(closedIn(volume, release.gas));
  const aired = airflow && { volume, airflow, mixing };
  const settled = (rate: Figure<'L/min'>, of: string) => aired && value(settlesAt(aired, rate, of));
  return present({
    shut,
    dangerousAfter: shut?.high.gt(dangerous.value)
      ? value(closedReaches(volume, release.peak, dangerous))
      : undefined,
    changes: airflow && value(airChanges(volume, airflow)),
    mean: settled(release.mean, 'mean'),
    peak: settled(release.peak, 'at the peak'),
    airing: aired && shut && value(purgeTime(aired, shut, limit)),
  });
}

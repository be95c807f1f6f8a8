/** Whether what was followed before still holds now that more was told. */

import type { Written } from '../quantities/written';
import type { Followed, Things, ToldTreatment } from './contents';
import type { StreamLogged } from './entries/streams';
import type { ContainerState, Happening, Told } from './state';

type Marks = ContainerState['marks'];

const sameWritten = (a: Written | undefined, b: Written | undefined): boolean =>
  a === b || (a?.value === b?.value && a?.unit === b?.unit);

/** What of a waste decides how much of it was placed. */
const sameAmounts = ({ liquid: a, solid: c }: StreamLogged, { liquid: b, solid: d }: StreamLogged): boolean =>
  Boolean(a) === Boolean(b) &&
  Boolean(c) === Boolean(d) &&
  sameWritten(a?.volume, b?.volume) &&
  sameWritten(a?.density, b?.density) &&
  sameWritten(c?.wetMass, d?.wetMass);

/** From when on marks differ; null where they are the same. */
function differFrom(before: Marks = [], now: Marks = []): string | null {
  if (before === now) return null;
  const first = [...before, ...now].findIndex((_, i) => before[i] !== now[i]);
  const ats = [before[first]?.at, now[first]?.at].filter((at) => at !== undefined);
  return ats.toSorted()[0] ?? null;
}

const hasEnded = ({ ended }: ToldTreatment, happened: (told: Told<unknown>) => boolean): boolean =>
  ended !== null && happened(ended);

/** A treatment that had ended was other than it was taken to be then, as soon as anything more is told of it. */
const sameTreatment = (
  before: ToldTreatment,
  now: ToldTreatment | undefined,
  happened: (told: Told<unknown>) => boolean,
): boolean =>
  now !== undefined &&
  now.entryId === before.entryId &&
  now.body === before.body &&
  !hasEnded(before, happened);

function sameThings(
  { things: before, missed, happenings, shutAsked, doubtAsked }: Followed,
  now: Things,
): boolean {
  const lastMoment = happenings.at(-1)?.at;
  const happened = ({ at }: Told<unknown>): boolean => lastMoment !== undefined && at <= lastMoment;
  for (const [id, stream] of before.streams) {
    const then = now.streams.get(id);
    if (then !== stream && !(then && sameAmounts(stream.body, then.body))) return false;
  }
  for (const [id, treatment] of before.treatments) {
    const then = now.treatments.get(id);
    if (then !== treatment && !sameTreatment(treatment, then, happened)) return false;
  }
  for (const id of before.opened.keys()) if (!now.opened.has(id)) return false;
  for (const id of missed)
    if (now.opened.has(id) || now.streams.has(id) || now.treatments.has(id)) return false;
  if (before.marks === now.marks) return true;
  for (const id of now.opened.keys()) {
    const from = differFrom(before.marks.get(id), now.marks.get(id));
    if (from === null) continue;
    // What shuts it counts from then on, a doubt at that very moment.
    if ((shutAsked.get(id) ?? '') > from || (doubtAsked.get(id) ?? '') >= from) return false;
  }
  return true;
}

/** What happened comes after all that was followed, and nothing of what that rests on is told otherwise by now. */
export function isAfterAll(last: Followed, happenings: readonly Happening[], things: Things): boolean {
  const { happenings: before } = last;
  return before.every((happening, i) => happening === happenings[i]) && sameThings(last, things);
}

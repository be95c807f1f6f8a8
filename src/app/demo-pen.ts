/** Writes the invented workshop's past: what happened, by whom, at which hour of which day before now. */
import { set, subDays, subMinutes } from 'date-fns';
import { v7 } from 'uuid';
import type { Body, BodyOf } from '../ledger/entries/body';
import type { Found } from '../ledger/entries/inspections';
import { finishedRun } from '../ledger/finished-run';
import type { Intention } from '../ledger/intention';
import { finishedWalk, inspectedIntention } from '../ledger/seen-on-walk';
import { emptyState } from '../ledger/state';
import { looksOf, walkList } from '../ledger/walks';
import type { Item } from '../safety/checklist-item';
import { answer, answeredAs, begin, standing } from '../safety/checklist-run';
import { checklists } from '../safety/checklists';
import type { Context, Given, Run, Who } from '../safety/run-schema';
import type { StoreFailure } from '../storage/failure';
import type { Book } from './open-book';

/** The disk said no in the middle of it. */
export class NotLaid extends Error {
  constructor(readonly failure: StoreFailure) {
    super(failure.code);
  }
}

/** Hours before now, as ISO text. */
export const timesBefore = (now: string) => ({
  /** @example at(26, '09:40') // the hour on the wall, 26 days ago */
  at: (daysAgo: number, clock: string): string => {
    const [hours = 0, minutes = 0] = clock.split(':').map(Number);
    return set(subDays(now, daysAgo), { hours, minutes, seconds: 0, milliseconds: 0 }).toISOString();
  },
  minutesAgo: (minutes: number): string => subMinutes(now, minutes).toISOString(),
});

const seconds = (iso: string, more: number): string => new Date(Date.parse(iso) + more * 1000).toISOString();

/** Answers that keep their order of magnitude where the middle of a wide range would look odd. */
type Said = Readonly<Record<string, string>>;

export function givenTo(item: Item, said: Said, second: Who): Given {
  const wanted = said[item.id];
  if (item.kind === 'confirm') return { kind: 'confirm', yes: true };
  if (item.kind === 'reading') return { kind: 'reading', written: wanted ?? item.min ?? item.max ?? '1' };
  if (item.answeredBy)
    return { kind: 'worked-out', result: 'enough', from: 'the ventilation check of the invented workshop' };
  const chosen = item.choices.find((choice) =>
    wanted === undefined ? !choice.stops && !choice.asksReason : choice.answer === wanted,
  );
  const { name, at } = second;
  const named = chosen?.names === 'person-and-time' ? { name, at } : { name };
  const who = chosen?.names === undefined ? {} : { who: named };
  return { kind: 'choice', answer: chosen?.answer ?? '', ...who };
}

/** Every question before the step, answered in order, eleven seconds each. */
export function gone(
  run: Run,
  said: Said,
  second: { readonly name: string; readonly callAt?: string | undefined },
  at: string,
): { readonly run: Run; readonly at: string } {
  const now = standing(run);
  if (now.state !== 'next') return { run, at };
  const next = seconds(at, 11);
  const answered = answer(
    run,
    givenTo(now.item, said, { name: second.name, at: second.callAt ?? seconds(next, 3600) }),
    next,
  );
  if (!answered.ok)
    throw new Error(`the invented checklist ${run.list.id} does not go on: ${answered.failure.code}`);
  return gone(answered.value.run, said, second, next);
}

type Cleared = {
  readonly list: string;
  readonly batchId?: string | null;
  readonly containerId?: string;
  readonly at: string;
  readonly said?: Said;
  /** Who stands by. */
  readonly second: string;
  /** When somebody who leaves comes back. */
  readonly returnAt?: string;
};

type Walked = {
  /** In the order in which they were walked along, with what was found at each. */
  readonly seen: readonly { readonly containerId: string; readonly found: readonly Found[] }[];
  readonly at: string;
  readonly said: Said;
};

type Place = NonNullable<Context['place']>;

/** A person with a pen. `who` writes everything after `holds`. */
export function penOf(perform: Book['perform'], now: string) {
  let who: string | null = null;
  let place: Place | null = null;

  async function writes(intention: Intention, at: string): Promise<readonly Body[]> {
    const written = await perform(intention, who, at);
    if (written.ok) return written.written.map(({ body }) => body);
    if ('failure' in written) throw new NotLaid(written.failure);
    throw new Error(`the invented workshop was refused ${intention.do}: ${written.refusal.code}`);
  }

  /** The body of a kind among those written. */
  async function told<K extends Body['kind']>(kind: K, intention: Intention, at: string): Promise<BodyOf<K>> {
    const found = (await writes(intention, at)).find((body): body is BodyOf<K> => body.kind === kind);
    if (!found) throw new Error(`${intention.do} wrote no ${kind}`);
    return found;
  }

  /** Goes through a checklist. @returns the entry that clears the step */
  async function clears(told: Cleared) {
    const { list: id, batchId = null, at, said = {}, second, returnAt } = told;
    const list = checklists.get(id);
    if (!list) throw new Error(`no checklist ${id}`);
    const here = list.station ? place : null;
    const context = {
      person: who ?? '',
      batchId,
      ...(told.containerId === undefined ? {} : { containerId: told.containerId }),
      ...(here === null ? {} : { place: here }),
    };
    const { run, at: finishedAt } = gone(
      begin(list, context, at),
      said,
      { name: second, callAt: returnAt },
      at,
    );
    const intention = finishedRun(v7(), run, finishedAt);
    const written = await perform(intention, who, finishedAt);
    if (!written.ok)
      throw 'failure' in written ? new NotLaid(written.failure) : new Error(written.refusal.code);
    // Who was to ring did, as far as that hour has come.
    for (const { body } of written.written)
      if (body.kind === 'clock-started' && body.due < now)
        await writes({ do: 'stop-clock', clockId: body.clockId, how: 'done' }, body.due);
    const stationId = here === null ? {} : { stationId: here.id };
    return { entry: written.written[0]?.id ?? null, step: list.step, finishedAt, ...stationId };
  }

  /** Walks along the containers, nine seconds each, then answers the looks of the place in order. */
  async function walks({ seen, at, said }: Walked): Promise<void> {
    const [walkId, list] = [v7(), walkList(emptyState)];
    for (const [n, one] of seen.entries())
      await writes(
        inspectedIntention(list, { walkId, ...one, startedAt: seconds(at, 9 * n) }),
        seconds(at, 9 * (n + 1)),
      );
    const from = seconds(at, 9 * seen.length);
    const place = looksOf(list, 'place').map((item) => {
      const context = { person: who ?? '', batchId: null };
      const told = answeredAs({ list, context }, item, givenTo(item, said, { name: '' }), from, from);
      if (!told.ok) throw new Error(`the invented walk does not go on: ${told.failure.code}`);
      return told.value;
    });
    const containerIds = seen.map(({ containerId }) => containerId);
    const walk = { walkId, startedAt: at, containerIds, notSeen: [], place, found: [] };
    await writes(finishedWalk(list, walk), seconds(from, 60));
  }

  const holds = (personId: string): void => {
    who = personId;
  };
  /** Where the lists that need a place are gone through from now on. */
  const stands = (at: Place): void => {
    place = at;
  };
  return { writes, told, clears, walks, holds, stands, holder: () => who, station: () => place?.id ?? null };
}

export type Pen = ReturnType<typeof penOf>;

/**
 * Every paper that can be made, as a job: plain data that goes to the worker. One more paper is one more kind here and the
 * function that makes it; its module is loaded when the first one is made.
 */
import type { Fonts } from '../../paperwork/pdf/pen';
import type { Tell } from '../../paperwork/progress';
import type { LabelsWanted } from '../labels/labels-job';
import type { RegisterWanted } from '../register/register-job';
import type { YearWanted } from '../year/year-job';
import type { DisposalWanted } from './disposal-job';
import { type Common, failureOf, type Made, type PaperFiles } from './making';
import type { ReceiptWanted } from './receipt-job';

type Wanted = {
  readonly disposal: DisposalWanted;
  readonly labels: LabelsWanted;
  readonly register: RegisterWanted;
  readonly receipt: ReceiptWanted;
  readonly year: YearWanted;
};

type Kind = keyof Wanted;

/** `wanted` is plain data that can be copied to the worker. */
export type Job<K extends Kind = Kind> = {
  readonly [P in K]: { readonly kind: P; readonly wanted: Wanted[P] };
}[K];

/** Makes one kind of paper. What it throws is told as a fault of ours. */
export type Maker<W> = (wanted: W, common: Common, tell: Tell, fonts: Fonts) => Promise<PaperFiles>;

const makers: { readonly [K in Kind]: () => Promise<Maker<Wanted[K]>> } = {
  disposal: async () => (await import('./disposal-job')).makeDisposal,
  labels: async () => (await import('../labels/labels-job')).makeLabels,
  register: async () => (await import('../register/register-job')).makeRegister,
  receipt: async () => (await import('./receipt-job')).makeReceipt,
  year: async () => (await import('../year/year-job')).makeYear,
};

type Run = (common: Common, tell: Tell) => Promise<PaperFiles>;

async function load<K extends Kind>({ kind, wanted }: Job<K>): Promise<Run> {
  const [maker, { loadFonts }] = await Promise.all([makers[kind](), import('../../paperwork/pdf/fonts')]);
  const fonts = await loadFonts();
  return (common, tell) => maker(wanted, common, tell, fonts);
}

/** The files, or what kept them from being made: a part that is not on the phone yet, no memory, or a fault of ours. */
export async function runJob(
  job: Job,
  common: () => Common | Promise<Common>,
  tell: Tell,
): Promise<Made<PaperFiles>> {
  let run: Run;
  try {
    run = await load(job);
  } catch (cause) {
    console.warn('papers cannot be made yet', cause);
    return { ok: false, failure: { code: 'not-loaded' } };
  }
  try {
    return { ok: true, paper: await run(await common(), tell) };
  } catch (cause) {
    console.warn('the paper was not made', cause);
    return { ok: false, failure: failureOf(cause) };
  }
}

/** Makes a disposal paper in the browser. What sets and draws it is loaded when the first one is made. */
import type { State } from '../../ledger/state';
import type { DecimalSign } from '../../quantities/format';
import { paperVessel } from './paper-vessel';

export type Sheet = 'A4' | 'Letter';

export type Wanted = {
  readonly state: State;
  readonly containerIds: readonly string[];
  readonly sheet: Sheet;
  /** Whether the working of every figure is printed. */
  readonly working: boolean;
  readonly now: string;
  readonly zone: string;
  readonly person: string | null;
  readonly sign: DecimalSign;
  readonly demo: boolean;
};

export type MadePaper = {
  readonly containerIds: readonly string[];
  readonly codes: readonly string[];
  readonly contentHash: string;
  readonly pdf: File;
  readonly json: File;
};

export type PaperFailure =
  | { readonly code: 'not-loaded' }
  | { readonly code: 'not-made'; readonly name: string };

type Made =
  | { readonly ok: true; readonly paper: MadePaper }
  | { readonly ok: false; readonly failure: PaperFailure };

/** Letter where letters are written on it, A4 elsewhere. @param language of the browser, e.g. "en-US" */
export const usualSheet = (language: string): Sheet => (/-(US|CA|MX)\b/i.test(language) ? 'Letter' : 'A4');

const tools = async () => {
  const [gather, paper, render, fonts] = await Promise.all([
    import('../../paperwork/disposal/gather'),
    import('../../paperwork/disposal/disposal-paper'),
    import('../../paperwork/pdf/render'),
    import('../../paperwork/pdf/fonts'),
  ]);
  return { ...gather, ...paper, ...render, fonts: await fonts.loadFonts() };
};

type Tools = Awaited<ReturnType<typeof tools>>;

/** Bytes on a buffer of their own, as a file wants them. */
const fileOf = (bytes: Uint8Array, name: string, type: string): File =>
  new File([new Uint8Array(bytes)], name, { type });

async function set(wanted: Wanted, use: Tools): Promise<MadePaper> {
  const { state, containerIds, sheet, working, person, sign, demo, now, zone } = wanted;
  const madeBy = person === null ? null : (state.people.get(person)?.body.name ?? null);
  const data = use.disposalData(containerIds, { state, now, zone, madeBy, sign, demo });
  const drawings = new Map(
    containerIds.flatMap((id) => {
      const container = state.containers.get(id);
      return container ? [[id, paperVessel(state, container, sign)] as const] : [];
    }),
  );
  const attachment = use.attachmentOf(data);
  const document = use.disposalPaper(data, { paper: sheet, working, drawings });
  const bytes = await use.renderPdf(document, use.fonts, { attachments: [attachment] });
  return {
    containerIds: data.containers.map(({ containerId }) => containerId),
    codes: data.containers.map(({ code }) => code),
    contentHash: data.contentHash,
    pdf: fileOf(bytes, use.fileName(data, 'pdf'), 'application/pdf'),
    json: fileOf(attachment.bytes, attachment.name, attachment.mime),
  };
}

const nameOf = (cause: unknown): string => (cause instanceof Error ? cause.name : String(cause));

/** The paper, or what kept it from being made: a part that is not on the phone yet, or a fault of ours. */
export async function makePaper(wanted: Wanted): Promise<Made> {
  let loaded: Tools;
  try {
    loaded = await tools();
  } catch (cause) {
    console.warn('papers cannot be made yet', cause);
    return { ok: false, failure: { code: 'not-loaded' } };
  }
  try {
    return { ok: true, paper: await set(wanted, loaded) };
  } catch (cause) {
    console.warn('the paper was not made', cause);
    return { ok: false, failure: { code: 'not-made', name: nameOf(cause) } };
  }
}

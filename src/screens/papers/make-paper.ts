/** Makes a disposal paper in the browser. What sets and draws it is loaded when the first one is made. */
import { type Common, fileOf, type Made, madeWith } from './making';
import { paperVessel } from './paper-vessel';

export type Sheet = 'A4' | 'Letter';

export type Wanted = {
  readonly containerIds: readonly string[];
  readonly sheet: Sheet;
  /** Whether the working of every figure is printed. */
  readonly working: boolean;
};

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

export const makePaper = ({ containerIds, sheet, working }: Wanted, common: Common): Promise<Made> =>
  madeWith(tools, async (use) => {
    const { state, sign } = common;
    const data = use.disposalData(containerIds, common);
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
  });

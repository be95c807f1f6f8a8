/** Lays labels out while a page stands, anew when what is wanted changes. */
import { useEffect, useState } from 'preact/hooks';
import type { Fonts } from '../../paperwork/pdf/pen';
import type { Common } from '../papers/making';
import type { LabelsWanted } from './labels-job';
import { type LabelsLaidOut, layOutLabels } from './lay-out-labels';

const families = {
  sans: ['Leesbook paper sans', '400'],
  bold: ['Leesbook paper sans', '700'],
  serif: ['Leesbook paper serif', '700'],
} as const;

let shown: Promise<void> | undefined;

/** Gives the page the fonts of the papers, once, so that a picture has the letters of the file. */
async function show(fonts: Fonts): Promise<void> {
  if (typeof FontFace === 'undefined') return;
  for (const [face, [family, weight]] of Object.entries(families)) {
    const bytes = new Uint8Array(fonts[face as keyof Fonts]);
    document.fonts.add(await new FontFace(family, bytes, { weight }).load());
  }
}

export type Preview =
  | { readonly state: 'none' }
  | { readonly state: 'drawing' }
  | { readonly state: 'not-loaded' }
  | { readonly state: 'drawn'; readonly laidOut: LabelsLaidOut };

/** @param common the state, the moment and the person when it begins */
export function usePreview(wanted: LabelsWanted, common: () => Common): Preview {
  const [preview, setPreview] = useState<Preview>({ state: 'none' });
  const key = JSON.stringify(wanted);
  useEffect(() => {
    let left = false;
    const say = (next: Preview): void => {
      if (!left) setPreview(next);
    };
    if (wanted.containerIds.length === 0) return say({ state: 'none' });
    say({ state: 'drawing' });
    layOutLabels(wanted, common())
      .then(async (laidOut) => {
        shown ??= show(laidOut.fonts);
        await shown;
        say({ state: 'drawn', laidOut });
      })
      .catch((cause: unknown) => {
        console.warn('the label cannot be shown yet', cause);
        say({ state: 'not-loaded' });
      });
    return () => {
      left = true;
    };
  }, [key]);
  return preview;
}

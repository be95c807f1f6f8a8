/** Saving a file to where the person says, and knowing that it lies there. */

type Handle = {
  readonly name: string;
  readonly createWritable: () => Promise<{
    readonly write: (data: Blob) => Promise<void>;
    readonly close: () => Promise<void>;
  }>;
  readonly getFile: () => Promise<File>;
};
type Picker = (options: { readonly suggestedName: string }) => Promise<Handle>;

/** Of Chromium; where there is none the file is saved by a link, and nobody learns whether it was. */
const picker = (): Picker | undefined =>
  (globalThis as { readonly showSaveFilePicker?: Picker }).showSaveFilePicker;

export const canPickPlace = (): boolean => picker() !== undefined;

export type Saved =
  | { readonly state: 'saved'; readonly name: string }
  /** The person closed the picker. */
  | { readonly state: 'left' }
  | { readonly state: 'not-saved' };

/** Asks for a place and writes there; `saved` once the file was found there as long as it is. Called in answer to a tap. */
export async function saveToPlace(file: File): Promise<Saved> {
  try {
    // Called on the window: it answers to nothing else.
    const handle = await picker()?.call(globalThis, { suggestedName: file.name });
    if (!handle) return { state: 'not-saved' };
    const writable = await handle.createWritable();
    await writable.write(file);
    await writable.close();
    const there = await handle.getFile();
    return there.size === file.size ? { state: 'saved', name: there.name } : { state: 'not-saved' };
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return { state: error.name === 'AbortError' ? 'left' : 'not-saved' };
  }
}

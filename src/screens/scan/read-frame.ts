/** Reads the QR pattern in the picture that a video shows: with the browser's own reader, else with one that comes along. */

/** The text of the pattern, or null where none is seen. */
export type ReadFrame = (video: HTMLVideoElement) => Promise<string | null>;

/** Of the Shape Detection draft, as far as it is used here. */
type Detector = {
  readonly detect: (of: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]>;
};
type DetectorClass = {
  readonly getSupportedFormats: () => Promise<readonly string[]>;
  new (options: { readonly formats: readonly string[] }): Detector;
};

async function ownReader(): Promise<ReadFrame | null> {
  const Class = (globalThis as { readonly BarcodeDetector?: DetectorClass }).BarcodeDetector;
  if (!Class) return null;
  try {
    if (!(await Class.getSupportedFormats()).includes('qr_code')) return null;
    const detector = new Class({ formats: ['qr_code'] });
    return async (video) => (await detector.detect(video))[0]?.rawValue ?? null;
  } catch (cause) {
    console.warn('the browser cannot read patterns itself', cause);
    return null;
  }
}

/** A larger picture shows no more of a label held before the lens, and takes longer to read. */
const mostAcross = 960;

async function readerAlong(): Promise<ReadFrame> {
  const { decodeQR } = await import('qr/decode.js');
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true });
  return async (video) => {
    const { videoWidth, videoHeight } = video;
    if (!context || videoWidth === 0) return null;
    const scale = Math.min(1, mostAcross / Math.max(videoWidth, videoHeight));
    canvas.width = Math.round(videoWidth * scale);
    canvas.height = Math.round(videoHeight * scale);
    context.drawImage(video, 0, 0, canvas.width, canvas.height);
    try {
      return decodeQR(context.getImageData(0, 0, canvas.width, canvas.height));
    } catch {
      // It throws where it sees no pattern, which is the usual case.
      return null;
    }
  };
}

/** @throws when the reader that comes along is not on the phone yet */
export const frameReader = async (): Promise<ReadFrame> => (await ownReader()) ?? (await readerAlong());

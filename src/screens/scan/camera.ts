/** The phone's camera, as far as reading labels needs it. The only place that asks for it. */

/** `none`: no camera, or a page that may not have one. `refused`: by the person or the phone. `busy`: another app has it. */
export type CameraFault = 'none' | 'refused' | 'busy' | 'other';

export type Camera = {
  readonly stream: MediaStream;
  /** Turns the light on or off; null where the camera has none. */
  readonly torch: ((on: boolean) => Promise<void>) | null;
  readonly stop: () => void;
};

export type Opened =
  | { readonly ok: true; readonly camera: Camera }
  | { readonly ok: false; readonly fault: CameraFault };

/** @see https://www.w3.org/TR/mediacapture-streams/#dom-mediadevices-getusermedia for the names */
const faults: Readonly<Record<string, CameraFault>> = {
  NotAllowedError: 'refused',
  SecurityError: 'refused',
  NotFoundError: 'none',
  OverconstrainedError: 'none',
  NotReadableError: 'busy',
  AbortError: 'busy',
};

/** Of Media Capture's image extension, which the types of TypeScript do not have. */
type WithTorch = { readonly torch?: boolean };

function torchOf(track: MediaStreamTrack | undefined): Camera['torch'] {
  const able = track?.getCapabilities?.() as WithTorch | undefined;
  if (!track || able?.torch !== true) return null;
  return (torch) => track.applyConstraints({ advanced: [{ torch } as MediaTrackConstraintSet] });
}

/** Asks for the camera at the back of the phone; the phone asks the person. */
export async function openCamera(): Promise<Opened> {
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!devices?.getUserMedia) return { ok: false, fault: 'none' };
  try {
    const stream = await devices.getUserMedia({
      audio: false,
      video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } },
    });
    const stop = () => {
      for (const track of stream.getTracks()) track.stop();
    };
    return { ok: true, camera: { stream, torch: torchOf(stream.getVideoTracks()[0]), stop } };
  } catch (cause) {
    console.warn('the camera was not opened', cause);
    const name = cause instanceof DOMException ? cause.name : '';
    return { ok: false, fault: faults[name] ?? 'other' };
  }
}

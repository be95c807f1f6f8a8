/** Looks through the camera from a tap until the page is left, hidden, or a pattern was read that ends it. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { type Camera, type CameraFault, openCamera } from './camera';
import { frameReader } from './read-frame';

/** Pause between two looks at the picture, ms: quick to the eye, and the phone stays cool. */
const pauseMs = 120;

export type Looking =
  | { readonly is: 'off' }
  | { readonly is: 'asking' }
  | { readonly is: 'on'; readonly camera: Camera }
  | { readonly is: 'failed'; readonly fault: CameraFault | 'not-loaded' };

/**
 * @param onRead a text that was read; true ends it
 * @returns `video` is where the picture goes
 */
export function useCamera(onRead: (text: string) => boolean) {
  const [looking, setLooking] = useState<Looking>({ is: 'off' });
  const video = useRef<HTMLVideoElement>(null);
  const latest = useRef(onRead);
  latest.current = onRead;
  const here = useRef(true);
  const camera = looking.is === 'on' ? looking.camera : null;

  async function start(): Promise<void> {
    if (looking.is === 'asking' || looking.is === 'on') return;
    setLooking({ is: 'asking' });
    const opened = await openCamera();
    if (opened.ok && !here.current) return opened.camera.stop();
    setLooking(opened.ok ? { is: 'on', camera: opened.camera } : { is: 'failed', fault: opened.fault });
  }
  const stop = (): void => setLooking({ is: 'off' });

  useEffect(() => {
    here.current = true;
    const hidden = () => {
      if (document.visibilityState === 'hidden') stop();
    };
    document.addEventListener('visibilitychange', hidden);
    return () => {
      here.current = false;
      document.removeEventListener('visibilitychange', hidden);
    };
  }, []);

  useEffect(() => {
    const element = video.current;
    if (!camera || !element) return;
    let ended = false;
    let timer = 0;
    element.srcObject = camera.stream;
    const look = async (): Promise<void> => {
      const read = await frameReader();
      await element.play();
      const again = async (): Promise<void> => {
        const text = ended ? null : await read(element).catch(() => null);
        if (ended) return;
        if (text !== null && latest.current(text)) return stop();
        timer = window.setTimeout(() => void again(), pauseMs);
      };
      await again();
    };
    look().catch((cause: unknown) => {
      if (ended) return;
      console.warn('the camera cannot be read', cause);
      setLooking({ is: 'failed', fault: 'not-loaded' });
    });
    return () => {
      ended = true;
      window.clearTimeout(timer);
      element.srcObject = null;
      camera.stop();
    };
  }, [camera]);

  return { looking, video, start, stop };
}

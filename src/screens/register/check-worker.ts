/** Checks a file away from the page. A worker of one file: the page ends it. */
import { type Checked, checkBytes } from './check-file';

const say = (checked: Checked): void => self.postMessage(checked);

self.addEventListener('message', async ({ data: file }: MessageEvent<File>) => {
  try {
    say({ ok: true, files: await checkBytes(file.name, new Uint8Array(await file.arrayBuffer())) });
  } catch (cause) {
    console.warn('the file was not checked', cause);
    say({ ok: false, failure: 'not-checked' });
  }
});

import { cleanup, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import * as z from 'zod/mini';
import { mostPhotos, type Photo, Photos } from '../../../src/ledger/entries/photos';
import { useForm } from '../../../src/screens/form';
import { PhotoStrip } from '../../../src/screens/photos/photo-strip';
import { usePhotos } from '../../../src/screens/photos/use-photos';
import { type PhotoKept, type Shell, ShellProvider } from '../../../src/screens/shell';
import { photoHash } from '../../../src/storage/photos';
import { PhotoField } from '../../../src/ui/photo-field';
import { open, tap, user } from '../../support/hand';
import { shellInMemory } from '../../support/shell-in-memory';

const Draft = z.object({ note: z.string(), photos: Photos });

/** The smallest form with photos; `heard` gets what would be written down. */
function Form({ heard }: { readonly heard: (photos: readonly Photo[] | null) => void }) {
  const form = useForm('tiny', Draft, () => ({ note: '', photos: [] }));
  const photos = usePhotos(form);
  return (
    <>
      <PhotoField {...photos.field} />
      <button type="button" onClick={() => void photos.settled().then(heard)}>
        Keep
      </button>
    </>
  );
}

const form = (shell: Shell) => {
  const heard = vi.fn();
  cleanup();
  render(
    <ShellProvider value={shell}>
      <Form heard={heard} />
    </ShellProvider>,
  );
  return heard;
};

const bytes = (n: number) => new Uint8Array([0xff, 0xd8, 0xff, 0xe0, n]);
const picture = (n: number) => new File([bytes(n)], `${n}.jpg`, { type: 'image/jpeg' });
const hash = (n: number) => photoHash(bytes(n));
const choose = (...files: File[]) => user.upload(screen.getByLabelText('Choose pictures'), files);
const shown = (place: number, of: number) => screen.findByAltText(`Photo ${place} of ${of}`);
const kept = (heard: ReturnType<typeof form>) =>
  (heard.mock.lastCall?.[0] as readonly Photo[] | undefined)?.map((photo) => photo.hash);

let urls = new Set<string>();
beforeEach(() => {
  urls = new Set();
  let made = 0;
  vi.spyOn(URL, 'createObjectURL').mockImplementation(() => {
    made += 1;
    const url = `blob:${made}`;
    urls.add(url);
    return url;
  });
  vi.spyOn(URL, 'revokeObjectURL').mockImplementation((url) => void urls.delete(url));
});
afterEach(async () => {
  cleanup();
  await waitFor(() => expect(urls, 'every address is given back').toEqual(new Set()));
  vi.restoreAllMocks();
});

describe('a photo in a form', () => {
  it('is kept at once, shown, and there again after a reload', async () => {
    const { shell, photos } = shellInMemory();
    form(shell);
    await choose(picture(1));
    await shown(1, 1);
    expect([...photos.keys()]).toEqual([hash(1)]);
    const heard = form(shell);
    await shown(1, 1);
    await tap('Keep');
    expect(heard).toHaveBeenLastCalledWith([{ hash: hash(1), type: 'image/jpeg', bytes: 5 }]);
  });

  it('chosen twice is one; several stand in the order chosen', async () => {
    const { shell } = shellInMemory();
    const heard = form(shell);
    await choose(picture(1), picture(2), picture(1));
    await shown(2, 2);
    await tap('Keep');
    expect(kept(heard)).toEqual([hash(1), hash(2)]);
  });

  it('that was removed can be put back where it was', async () => {
    const { shell } = shellInMemory();
    const heard = form(shell);
    await choose(picture(1), picture(2), picture(3));
    await shown(3, 3);
    await tap('Remove photo 2');
    await tap('Keep');
    expect(kept(heard)).toEqual([hash(1), hash(3)]);
    await tap('Put it back');
    await shown(3, 3);
    await tap('Keep');
    expect(kept(heard)).toEqual([hash(1), hash(2), hash(3)]);
    expect(screen.queryByRole('button', { name: 'Put it back' })).toBeNull();
  });

  it('beyond the most of one entry is left out, and that is said', async () => {
    const { shell, photos } = shellInMemory();
    const heard = form(shell);
    await choose(...Array.from({ length: mostPhotos + 1 }, (_, n) => picture(n)));
    await shown(mostPhotos, mostPhotos);
    expect(screen.getByRole('alert').textContent).toMatch(/left out/);
    await tap('Keep');
    expect(kept(heard)).toHaveLength(mostPhotos);
    expect(photos.size).toBe(mostPhotos);
  });

  it('that is still being kept counts among the most of one entry', async () => {
    const { shell, photos } = shellInMemory();
    let letGo = (): void => undefined;
    const gate = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    form({ ...shell, keepPhoto: (taken) => gate.then(() => shell.keepPhoto(taken)) });
    const four = [1, 2, 3, 4];
    await choose(...four.map(picture));
    await choose(...four.map((n) => picture(n + 4)));
    expect(screen.getByRole('alert').textContent).toMatch(/left out/);
    letGo();
    await shown(mostPhotos, mostPhotos);
    expect(photos.size).toBe(mostPhotos);
  });

  it('that is still being kept is waited for', async () => {
    const { shell } = shellInMemory();
    const answers: ((kept: PhotoKept) => void)[] = [];
    const slow = { ...shell, keepPhoto: () => new Promise<PhotoKept>((resolve) => answers.push(resolve)) };
    const heard = form(slow);
    await choose(picture(1));
    await tap('Keep');
    expect(screen.getByRole('status').textContent).toMatch(/Keeping/);
    expect(heard).not.toHaveBeenCalled();
    answers[0]?.(await shell.keepPhoto(picture(1)));
    await waitFor(() => expect(kept(heard)).toEqual([hash(1)]));
    await shown(1, 1);
  });
});

describe('a photo that cannot be kept', () => {
  const rubbish = new File(['rubbish'], 'a.jpg', { type: 'image/jpeg' });

  it('is told with what to do, the others stay, and the form goes on', async () => {
    const { shell } = shellInMemory();
    const heard = form(shell);
    await choose(picture(1), rubbish, picture(2));
    await shown(2, 2);
    expect(screen.getByRole('alert').textContent).toMatch(/not a picture.*Choose another/);
    await tap('Keep');
    expect(kept(heard)).toEqual([hash(1), hash(2)]);
  });

  it('because the phone is full is told so, and the draft is whole', async () => {
    const { shell, breakStore, drafts } = shellInMemory();
    form(shell);
    await choose(picture(1));
    await shown(1, 1);
    const before = drafts.get('tiny');
    breakStore({ code: 'disk-full' });
    await choose(picture(2));
    expect((await screen.findByRole('alert')).textContent).toMatch(
      /phone is full.*stands.*or keep without it/,
    );
    expect(drafts.get('tiny')).toBe(before);
  });

  it('while somebody keeps the form holds that one tap back, and not the next', async () => {
    const { shell } = shellInMemory();
    const answers: ((kept: PhotoKept) => void)[] = [];
    const slow = { ...shell, keepPhoto: () => new Promise<PhotoKept>((resolve) => answers.push(resolve)) };
    const heard = form(slow);
    await choose(picture(1));
    await tap('Keep');
    answers[0]?.({ ok: false, fault: { code: 'too-big' } });
    await waitFor(() => expect(heard).toHaveBeenLastCalledWith(null));
    expect(screen.getByRole('alert').textContent).toMatch(/larger than 40\sMB/);
    await tap('Keep');
    expect(heard).toHaveBeenLastCalledWith([]);
  });
});

describe('a photo of an entry', () => {
  const told = { hash: hash(1), type: 'image/jpeg', bytes: 5 } as const;
  const strip = (shell: Shell) =>
    render(
      <ShellProvider value={shell}>
        <PhotoStrip photos={[told]} />
      </ShellProvider>,
    );

  it('opens a page of its own, at its full size when asked', async () => {
    const { shell } = shellInMemory();
    await shell.keepPhoto(picture(1));
    strip(shell);
    const way = await screen.findByRole('link', { name: 'Open photo 1' });
    open(shell, way.getAttribute('href') ?? '');
    await screen.findByRole('img');
    await tap('Full size');
    await tap('Fit to the page');
  });

  it('that is damaged is said to be damaged, and nothing of it is shown', async () => {
    const { shell, photos } = shellInMemory();
    await shell.keepPhoto(picture(1));
    photos.set(hash(1), bytes(2));
    strip(shell);
    await screen.findByText('damaged');
    expect(screen.queryByRole('img')).toBeNull();
    open(shell, `photos/${hash(1)}`);
    expect((await screen.findByRole('alert')).textContent).toMatch(/damaged/);
    expect(screen.queryByRole('img')).toBeNull();
  });

  it('that lies on another phone is said to be missing', async () => {
    const { shell } = shellInMemory();
    open(shell, `photos/${hash(1)}`);
    expect((await screen.findByRole('alert')).textContent).toMatch(/not on this phone/);
    open(shell, 'photos/rubbish');
    expect((await screen.findByRole('alert')).textContent).toMatch(/not on this phone/);
  });
});

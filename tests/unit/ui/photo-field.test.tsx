import { render, screen, within } from '@testing-library/preact';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { PhotoField, type PhotoFieldProps, PhotoTiles } from '../../../src/ui/photo-field';

const words: PhotoFieldProps['words'] = {
  take: 'Take a photo',
  choose: 'Choose pictures',
  keeping: 'Keeping',
  optional: 'may stay empty',
  full: (most) => `${most} are the most`,
  one: (place, of) => `Photo ${place} of ${of}`,
  open: (place) => `Open photo ${place}`,
  remove: 'Remove',
  removeOne: (place) => `Remove photo ${place}`,
  removed: 'Removed',
  putBack: 'Put it back',
  missing: 'not here',
  damaged: 'damaged',
  loading: 'opening',
};

const field = (props: Partial<PhotoFieldProps> = {}) => {
  const heard = { onFiles: vi.fn(), onRemove: vi.fn() };
  render(<PhotoField label="Photos" photos={[]} most={3} words={words} {...heard} {...props} />);
  return heard;
};
const camera = () => screen.getByLabelText<HTMLInputElement>('Take a photo');
const files = () => screen.getByLabelText<HTMLInputElement>('Choose pictures');
const picture = (name: string) => new File(['x'], name, { type: 'image/png' });

describe('a field for photos', () => {
  it('is a group with its name that asks the camera behind, or for several pictures of the phone', () => {
    field({ hint: 'may stay empty' });
    const group = screen.getByRole('group', { name: 'Photos' });
    expect(within(group).getByText('may stay empty')).toBeTruthy();
    expect(camera().getAttribute('capture')).toBe('environment');
    expect(camera().multiple).toBe(false);
    expect(files().hasAttribute('capture')).toBe(false);
    expect(files().multiple).toBe(true);
    for (const input of [camera(), files()]) expect(input.accept).toBe('image/*');
  });

  it('hands over what was chosen, and the same picture once more', async () => {
    const { onFiles } = field();
    const chosen = [picture('a.png'), picture('b.png')];
    await userEvent.upload(files(), chosen);
    expect(onFiles).toHaveBeenLastCalledWith(chosen);
    expect(files().value).toBe('');
    await userEvent.upload(files(), chosen);
    expect(onFiles).toHaveBeenCalledTimes(2);
  });

  it('shows each as a picture that opens, with a button of its own to remove it', async () => {
    const { onRemove } = field({
      photos: [
        { hash: 'a', url: 'blob:a', href: '#/photos/a' },
        { hash: 'b', url: 'blob:b', href: '#/photos/b' },
      ],
    });
    expect(screen.getByAltText('Photo 2 of 2').getAttribute('src')).toBe('blob:b');
    expect(screen.getByRole('link', { name: 'Open photo 2' }).getAttribute('href')).toBe('#/photos/b');
    await userEvent.click(screen.getByRole('button', { name: 'Remove photo 2' }));
    expect(onRemove).toHaveBeenCalledExactlyOnceWith('b');
  });

  it('never shows a damaged or missing one as a picture, and says what it is', () => {
    field({
      photos: [
        { hash: 'a', gone: 'damaged', href: '#/photos/a' },
        { hash: 'b', gone: 'missing' },
      ],
    });
    expect(screen.queryByRole('img')).toBeNull();
    expect(screen.getByRole('link', { name: /Photo 1 of 2.*damaged/ })).toBeTruthy();
    expect(screen.getByText('not here')).toBeTruthy();
  });

  it('takes no more than fit, those being kept counted', () => {
    const two = [{ hash: 'a' }, { hash: 'b' }];
    field({ photos: two, keeping: 1 });
    expect(screen.getByRole('status').textContent).toBe('Keeping');
    expect(screen.queryByLabelText('Take a photo')).toBeNull();
    field({ photos: [...two, { hash: 'c' }] });
    expect(screen.getByText('3 are the most')).toBeTruthy();
  });

  it('says aloud what went wrong, at both buttons', () => {
    field({ error: 'not a picture' });
    expect(screen.getByRole('alert').textContent).toBe('not a picture');
    for (const input of [camera(), files()]) {
      const described = input.getAttribute('aria-describedby') ?? '';
      expect(document.getElementById(described)?.textContent).toBe('not a picture');
    }
  });
});

it('photos that were written down are tiles with nothing to remove', () => {
  render(
    <PhotoTiles
      label="Photos of C-07"
      photos={[{ hash: 'a', url: 'blob:a', href: '#/photos/a' }]}
      words={words}
    />,
  );
  expect(within(screen.getByRole('list', { name: 'Photos of C-07' })).getAllByRole('link')).toHaveLength(1);
  expect(screen.queryByRole('button')).toBeNull();
});

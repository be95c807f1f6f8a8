/** Words of photos: the field, the page of one, and why a picture could not be kept. */
import type { PhotoFieldWords } from '../../ui/photo-field';
import { mostMegabytes, type PhotoFault } from './prepare-picture';

export const photoWords = {
  label: 'Photos',
  tooMany: (most: number) => `One entry takes ${most} photos. The others you chose were left out.`,
  title: 'Photo',
  fit: 'Fit to the page',
  full: 'Full size',
  alone: 'The photo, as it was kept',
  missing:
    'This photo is not on this phone. The entry that names it stands; the photo lies where it was taken.',
  damaged:
    'This photo is damaged: its bytes are not the ones that were kept. It shows nothing that can be relied on.',
  notRead: 'The photo could not be read just now. Go back and open it again.',
  field: {
    take: 'Take a photo',
    choose: 'Choose pictures',
    keeping: 'Keeping the photo…',
    optional: 'may stay empty',
    full: (most: number) => `${most} photos: the most that one entry takes.`,
    one: (place: number, of: number) => `Photo ${place} of ${of}`,
    open: (place: number) => `Open photo ${place}`,
    remove: 'Remove',
    removeOne: (place: number) => `Remove photo ${place}`,
    removed: 'Photo removed.',
    putBack: 'Put it back',
    missing: 'not on this phone',
    damaged: 'damaged',
    loading: 'opening…',
  } satisfies PhotoFieldWords,
} as const;

/** What was wrong with a picture, and what to do. Form and record stand as they were in all of these. */
export function photoFaultWords(fault: PhotoFault): string {
  switch (fault.code) {
    case 'not-a-picture':
      return 'This is not a picture, or it is damaged or too large for this phone to open. Choose another, or take a photo with the button.';
    case 'too-big':
      return `This picture is larger than ${mostMegabytes}\u00a0MB. Choose a smaller one, or take a photo with the button.`;
    case 'format-not-opened':
      return 'This phone keeps its photos in a format this browser cannot open: take it here with the button.';
    case 'not-handed-over':
      return 'The phone did not hand the file over. If it lies in a cloud, fetch it to the phone first, then choose it again.';
    case 'not-stored':
      return fault.failure.code === 'disk-full'
        ? 'The phone is full: the photo was not kept. What you have written stands. Make room, then take it again, or keep without it.'
        : 'The photo could not be kept just now. What you have written stands. Take it again, or keep without it.';
  }
}

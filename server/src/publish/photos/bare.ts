/**
 * A photo without what it says beside the picture: where and when it was taken, with which camera, by whom. Only what a
 * viewer needs is kept, so nothing slips through that a list of things to take out would not know.
 */
import { bytesOf, NotAPicture, stands } from './bytes.ts';
import { bareGif } from './gif.ts';
import { bareJpeg } from './jpeg.ts';
import { barePng } from './png.ts';
import { bareWebp } from './webp.ts';

/** The bytes of a JPEG, PNG, GIF or WebP; undefined for others and for a picture that breaks off. */
export function barePhoto(photo: Uint8Array): Uint8Array | undefined {
  const bytes = bytesOf(photo);
  try {
    if (stands(bytes, 0, '\xff\xd8')) return bareJpeg(photo);
    if (stands(bytes, 0, '\x89PNG\r\n\x1a\n')) return barePng(photo);
    if (stands(bytes, 0, 'GIF8')) return bareGif(photo);
    if (stands(bytes, 0, 'RIFF') && stands(bytes, 8, 'WEBP')) return bareWebp(photo);
  } catch (error) {
    if (!(error instanceof NotAPicture)) throw error;
  }
  return undefined;
}

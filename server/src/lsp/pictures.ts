/** The picture over the path of a photo: only of a plain file in an open folder, and only for who can show it. */
import { URI, Utils } from 'vscode-uri';
import type { Picture } from '../features/hover/photo.ts';
import { escapeMarkdown, markdownBlocks } from '../features/markdown.ts';
import { isInside } from './addresses.ts';
import type { PictureFound } from './files.ts';
import type { Service, Snapshot } from './service.ts';

/** In pixels: a picture of 4 to 3 is seen whole in VS Code's hover. */
const WIDTH = 240;

/** What VS Code shows of its own disk. */
const SHOWN = /\.(?:svg|png|jpe?g|gif|bmp|webp)$/i;

type Why = Extract<PictureFound, { readonly why: unknown }>['why'] | 'nowhere' | 'outside' | 'kind';

const words: Readonly<Record<Why, string>> = {
  missing: 'There is no such file.',
  link: 'Not shown: it is behind a symbolic link.',
  unreachable: 'Not shown: the editor cannot show pictures of this file system.',
  nowhere: 'Not shown: the journal is not in an open folder.',
  outside: 'Not shown: it is outside the folder of the journal.',
  kind: 'Not shown: it is not an svg, png, jpg, gif, bmp or webp file.',
};

/** What a hover says of a photo, with the picture, or with the reason why that is not shown. */
export async function pictureMarkdown(
  picture: Picture, uri: string, { room: { folder, kind } }: Snapshot, service: Service,
): Promise<string> {
  const caption = escapeMarkdown(picture.caption);
  if (!service.showsPictures()) return caption;
  const found = await find();
  // The width is the editor's own addition to Markdown. An address has no sign that could end it.
  return 'why' in found
    ? markdownBlocks([caption, words[found.why]])
    : markdownBlocks([caption, `![${caption}](${URI.parse(found.address).toString()}|width=${WIDTH})`]);

  async function find(): Promise<{ readonly address: string } | { readonly why: Why }> {
    if (kind !== 'folder') return { why: 'nowhere' };
    if (picture.path === undefined) return { why: 'outside' };
    const address = Utils.joinPath(Utils.dirname(URI.parse(uri)), picture.path).toString();
    if (!isInside(address, folder)) return { why: 'outside' };
    return SHOWN.test(picture.path) ? service.findPicture(address, folder) : { why: 'kind' };
  }
}

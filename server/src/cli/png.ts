/** Pictures as PNG, by resvg, which Plumule does not bring along: it is another program for each kind of machine. */
import type * as Api from '@resvg/resvg-js';
import type { Picture } from '../pictures/picture.ts';

export const NO_RESVG = 'PNG needs resvg. Run “npm install --global @resvg/resvg-js”, and try again.';
export const NO_FONT = 'There is no font on this machine, so the picture would be without words. Install one, or write SVG.';

/** Pixels of a PNG for each of a picture: sharp on a screen of high resolution, and in print. */
const DENSITY = 2;

type Resvg = Pick<typeof Api, 'Resvg'>;
type Fonts = Api.ResvgRenderOptions['font'];

/** Undefined where it is not installed beside Plumule, or not for this machine. */
export async function findResvg(): Promise<Resvg | undefined> {
  try {
    return await import('@resvg/resvg-js');
  } catch {
    return undefined;
  }
}

/** With the sans serif font of the machine; undefined where it has none. */
export function pngOf(
  { svg }: Pick<Picture, 'svg'>, { Resvg }: Resvg, font: Fonts = { loadSystemFonts: true },
): Uint8Array | undefined {
  // Without a font the letters would be missing, and nothing would say so.
  if (new Resvg(LETTER, { font }).getBBox() === undefined) return undefined;
  return new Resvg(svg.markup, { font, fitTo: { mode: 'zoom', value: DENSITY } }).render().asPng();
}

const LETTER = '<svg xmlns="http://www.w3.org/2000/svg"><text y="20" font-family="sans-serif">a</text></svg>';
